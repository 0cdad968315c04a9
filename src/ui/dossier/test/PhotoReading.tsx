import { type BlotMade, BlotReader } from '../../colour/BlotReader.tsx';
import { useOriginal } from '../../colour/useOriginal.ts';
import { Busy, Button, Notice, PhotoTaker } from '../../kit/index.ts';

/** Grading from a photograph under the weave card, and one from before the test where there is one. */
export function PhotoReading(props: {
  readonly before: string | null;
  readonly onBefore: (photo: string | null) => void;
  readonly after: string | null;
  readonly onAfter: (photo: string) => void;
  readonly onMade: (made: BlotMade | null) => void;
}) {
  const [earlier, later] = [useOriginal(props.before), useOriginal(props.after)];
  return (
    <>
      <p>
        Lay the white cloth flat under a weave card so that the blot and clean cloth around it show in the
        window. Even daylight, no flash.
      </p>
      <div className="takers">
        <PhotoTaker
          label={props.after === null ? 'Photograph the blot' : 'Photograph the blot again'}
          tone={props.after === null ? 'act' : 'ghost'}
          onTaken={({ photo }) => props.onAfter(photo)}
        />
        {props.before === null ? (
          <PhotoTaker
            label="The cloth before the test, if there is one"
            onTaken={({ photo }) => props.onBefore(photo)}
          />
        ) : (
          <Button tone="ghost" onPress={() => props.onBefore(null)}>
            Leave out the one from before
          </Button>
        )}
      </div>
      {(earlier.isFetching || later.isFetching) && <Busy words="Fetching the photograph" />}
      {(earlier.isFailed || later.isFailed) && (
        <Notice tone="stop" title="The photograph could not be fetched.">
          <p>Look at the line to the server, close this and open it again: the photograph is kept.</p>
        </Notice>
      )}
      <BlotReader before={earlier.blob} after={later.blob} onMade={props.onMade} />
    </>
  );
}
