import { type ReactNode, useId, useState } from 'react';
import { threeFigures } from '../../core/weave/index.ts';
import type { Answered, ShownProblem } from '../call/index.ts';
import type { CardKnown } from '../card/cardInPicture.ts';
import { Busy, Button, Notice, newId, ProblemNotice, Section } from '../kit/index.ts';
import { NodesSection } from './NodesSection.tsx';
import { PlaceCounter } from './PlaceCounter.tsx';
import type { CountedPlace } from './placeCount.ts';
import { RugCount, type RugCountProps } from './RugCount.tsx';
import { countOf, nodesOf, type SaidNodes } from './rugCount.ts';
import './weave.css';

interface PlacesCounterProps extends Omit<RugCountProps, 'count'> {
  readonly places: readonly CountedPlace[];
  readonly onPlaces: (places: readonly CountedPlace[]) => void;
  readonly nodes: SaidNodes;
  readonly onNodes: (nodes: SaidNodes) => void;
  readonly known: CardKnown;
  /** Keeps the photograph a place was counted on and names it. */
  readonly keepPhoto: (
    photograph: File,
    onProgress: (done: number) => void,
  ) => Promise<Answered<{ readonly photo: string }>>;
  /** What can be done with the result. */
  readonly children?: ReactNode;
}

const mostPlaces = 9;
const usualPlaces = ['middle', 'start, left', 'start, right', 'end, left', 'end, right'];

const nextPlace = (places: readonly CountedPlace[]): string =>
  usualPlaces.find((usual) => places.every(({ place }) => place !== usual)) ?? `place ${places.length + 1}`;

/** Photographs of several places of one rug, counted one after another into one result. */
export function PlacesCounter(props: PlacesCounterProps) {
  const { places, onPlaces, nodes, onNodes } = props;
  const [waiting, setWaiting] = useState<readonly File[]>([]);
  const [named, setNamed] = useState<string | null>(null);
  const [sending, setSending] = useState<number | null>(null);
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const [file, ...later] = waiting;
  const place = named ?? nextPlace(places);
  const count = countOf(places, nodes);
  const goOn = () => {
    setWaiting(later);
    setNamed(null);
    setProblem(null);
  };
  const keep = async (photograph: File, counted: Omit<CountedPlace, 'key' | 'photo'>) => {
    setSending(0);
    const kept = await props.keepPhoto(photograph, setSending);
    setSending(null);
    if (!kept.ok) return setProblem(kept.problem);
    onPlaces([...places, { ...counted, key: newId(), photo: kept.value.photo }]);
    goOn();
  };
  return (
    <>
      {file === undefined ? null : (
        <PlaceCounter
          key={`${file.name} ${file.lastModified} ${waiting.length}`}
          file={file}
          known={{ ...props.known, takesLoose: true }}
          place={place}
          onPlace={setNamed}
          nodes={nodes}
          isKeeping={sending !== null}
          onKeep={(counted) => keep(file, counted)}
          onLeave={goOn}
        />
      )}
      {sending === null ? null : <Busy words="Sending the photograph" done={sending} />}
      <ProblemNotice problem={problem} />
      {later.length === 0 ? null : (
        <p className="why" role="status">
          {later.length} more {later.length === 1 ? 'photograph waits' : 'photographs wait'}.
        </p>
      )}
      {file === undefined && places.length < mostPlaces ? (
        <ChoosePhotographs isFirst={places.length === 0} onChosen={setWaiting} />
      ) : null}
      <NodesSection nodes={nodes} onNodes={onNodes} />
      {places.length === 0 ? null : (
        <Section title="The places together">
          <KeptPlaces places={places} nodes={nodes} onPlaces={onPlaces} />
          {count === null ? (
            <Notice tone="caution" title="One node or two to a knot?">
              <p>The pictures do not tell, or disagree. Say it above; until then no knots are stated.</p>
            </Notice>
          ) : (
            <RugCount count={count} units={props.units} areaM2={props.areaM2} marks={props.marks} />
          )}
          {props.children}
        </Section>
      )}
    </>
  );
}

function ChoosePhotographs(props: {
  readonly isFirst: boolean;
  readonly onChosen: (files: readonly File[]) => void;
}) {
  const id = useId();
  return (
    <div className="photoTaker weaveTake">
      <label className={`btn ${props.isFirst ? 'act' : 'ghost'}`} htmlFor={id}>
        {props.isFirst ? 'Choose or take photographs' : 'Another place'}
      </label>
      <input
        id={id}
        className="unseen"
        type="file"
        accept="image/*"
        multiple
        onChange={({ target }) => {
          props.onChosen([...(target.files ?? [])]);
          target.value = '';
        }}
      />
    </div>
  );
}

function KeptPlaces(props: {
  readonly places: readonly CountedPlace[];
  readonly nodes: SaidNodes;
  readonly onPlaces: (places: readonly CountedPlace[]) => void;
}) {
  const { places } = props;
  const by = nodesOf(props.nodes, places)?.value ?? null;
  return (
    <ol className="keptPlaces">
      {places.map(({ key, place, weftwise, warpwise }) => (
        <li key={key}>
          <div>
            <b>{place}</b>: {threeFigures(weftwise.count / (by ?? 1))} × {threeFigures(warpwise.count)} in 7
            cm
            <div className="why">
              {by === null ? 'nodes across, ' : ''}
              {weftwise.basis === warpwise.basis
                ? weftwise.basis
                : `across ${weftwise.basis}, along ${warpwise.basis}`}
            </div>
          </div>
          <Button
            tone="ghost"
            label={`Take ${place} out`}
            onPress={() => props.onPlaces(places.filter((other) => other.key !== key))}
          >
            Take out
          </Button>
        </li>
      ))}
    </ol>
  );
}
