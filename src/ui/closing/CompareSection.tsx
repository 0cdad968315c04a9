import { useCallback, useState } from 'react';
import { comparedFact, type Noted, type NotedColour, type RugStanding } from '../../dossier/index.ts';
import { compareSentence } from '../../text/colourWords.ts';
import { sendPhotograph } from '../call/sendPhotograph.ts';
import type { ShownProblem } from '../call/shownProblem.ts';
import { ComparedView } from '../colour/ComparedView.tsx';
import { CompareReader, type ComparisonMade } from '../colour/CompareReader.tsx';
import { useOriginal } from '../colour/useOriginal.ts';
import { Part } from '../dossier/Part.tsx';
import { Busy, Button, Notice, PhotoTaker, ProblemNotice, When } from '../kit/index.ts';
import { pictureAddress } from '../kit/Picture.tsx';
import { PhotoChoice } from './PhotoChoice.tsx';
import { photographFact, useClosing } from './useClosing.ts';

/** A comparison as it stands in the record. */
function Recorded({ compared }: { readonly compared: Noted<'ColoursCompared'> }) {
  const { shown, colours, sentence, unmeasured = [] } = compared;
  return (
    <ComparedView
      sentence={sentence}
      shown={{
        before: pictureAddress(shown.before.photo, 'shown'),
        after: pictureAddress(shown.after.photo, 'shown'),
        map: pictureAddress(shown.map.photo, 'shown'),
      }}
      middleDeltaE={compared.middleDeltaE}
      controlDeltaE={compared.controlDeltaE}
      colours={colours}
      unmeasured={unmeasured}
    >
      <p>
        Compared <When at={compared.when} />, laid over each other by the {compared.alignedBy}.
      </p>
    </ComparedView>
  );
}

const facesOf = (standing: RugStanding, ...occasions: readonly string[]) =>
  standing.photographs.filter(({ shows, occasion }) => shows === 'face' && occasions.includes(occasion));

const readers = (colours: readonly NotedColour[]) =>
  colours.map(({ colour, name, looks }) => ({ colour, name, looks }));

/** The rug before the work beside the rug after it: what soil took with it, and whether a dye moved. */
export function CompareSection({ rug }: { readonly rug: string }) {
  const { standing, visit, isOpen, act, isBusy, problem } = useClosing(rug);
  const [isBegun, setBegun] = useState(false);
  const [picked, setPicked] = useState<{ readonly before?: string; readonly after?: string }>({});
  const [made, setMade] = useState<ComparisonMade | null>(null);
  const [sending, setSending] = useState<number | null>(null);
  const [unsent, setUnsent] = useState<ShownProblem | null>(null);
  const keep = useCallback((comparison: ComparisonMade | null) => setMade(comparison), []);
  const [earlier, later] = [facesOf(standing, 'intake'), facesOf(standing, 'after work', 'return')];
  const before = picked.before ?? earlier.at(-1)?.photo ?? null;
  const after = picked.after ?? later.at(-1)?.photo ?? null;
  const [was, is] = [useOriginal(isBegun ? before : null), useOriginal(isBegun ? after : null)];
  if (visit === null) return null;
  const last = visit.comparisons.at(-1);
  if (!isOpen && last === undefined) return null;

  const record = async () => {
    if (made === null || before === null || after === null) return;
    setUnsent(null);
    const { shown } = made.compared;
    const photos: string[] = [];
    for (const [index, file] of [shown.before, shown.after, shown.map].entries()) {
      const sent = await sendPhotograph(file, (done) => setSending((index + done) / 3));
      if (!sent.ok) {
        setSending(null);
        setUnsent(sent.problem);
        return;
      }
      photos.push(sent.value.photo);
    }
    setSending(null);
    const [wasShown = '', isShown = '', map = ''] = photos;
    const side = (slot: 'before' | 'after', photo: string) => ({
      ...{ photo, card: made.cards[slot] },
      ...(made.corners === null ? {} : { corners: made.corners[slot] }),
    });
    const fact = comparedFact(made.compared, {
      before: side('before', before),
      after: side('after', after),
      shown: { before: { photo: wasShown }, after: { photo: isShown }, map: { photo: map } },
      sentence: compareSentence(made.compared),
      named: standing.colours,
    });
    if (await act(fact)) setBegun(false);
  };
  const corners = (photo: string | null) => (photo === null ? undefined : standing.corners[photo]?.corners);
  const [cornersBefore, cornersAfter] = [corners(before), corners(after)];
  return (
    <Part id="compare" title="Before and after">
      {last !== undefined && !isBegun && <Recorded compared={last} />}
      {!isBegun && isOpen && (
        <>
          {last === undefined && (
            <p className="why">
              A picture of the face from the door and one from now, each with the same weave card lying on the
              rug, show whether soil went or dye.
            </p>
          )}
          <Button tone="ghost" onPress={() => setBegun(true)}>
            {last === undefined ? 'Compare two pictures' : 'Compare again'}
          </Button>
        </>
      )}
      {isBegun && (
        <div className="form">
          <PhotoChoice
            label="Picture from before the work"
            photographs={earlier}
            value={before}
            onChange={(photo) => setPicked({ ...picked, before: photo })}
          />
          <PhotoChoice
            label="Picture from after the work"
            photographs={later}
            value={after}
            onChange={(photo) => setPicked({ ...picked, after: photo })}
          />
          <PhotoTaker
            label="Photograph the face now, with the card on it"
            keptAs={`compare/${rug}`}
            onTaken={async (photo) => {
              await act(photographFact(photo, 'face', 'after work'));
              setPicked({ ...picked, after: photo.photo });
            }}
          />
          {(was.isFetching || is.isFetching) && <Busy words="Fetching the photographs" />}
          {(was.isFailed || is.isFailed) && (
            <Notice tone="stop" title="A photograph could not be fetched.">
              <p>Look at the line to the server, and open this again.</p>
            </Notice>
          )}
          {was.blob !== null && is.blob !== null && (
            <CompareReader
              before={was.blob}
              after={is.blob}
              colours={readers(standing.colours)}
              knownBefore={cornersBefore}
              knownAfter={cornersAfter}
              onMade={keep}
            />
          )}
          {sending !== null && <Busy words="Sending the pictures" done={sending} />}
          <ProblemNotice problem={unsent ?? problem} />
          {made !== null && (
            <Button wide isDisabled={isBusy || sending !== null} onPress={record}>
              Record the comparison
            </Button>
          )}
          <Button tone="ghost" onPress={() => setBegun(false)}>
            Leave it
          </Button>
        </div>
      )}
    </Part>
  );
}
