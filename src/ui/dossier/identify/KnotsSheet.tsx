import { type KnotCount, knotResult } from '../../../dossier/index.ts';
import { Button, Choice, LineField, NumberField, newId, ProblemNotice, Sheet } from '../../kit/index.ts';
import { figure } from '../figures.ts';
import { useField, useForm } from '../useForm.ts';

type Place = Extract<KnotCount, { counted: 'by hand' }>['places'][number];

interface Typed {
  readonly key: string;
  readonly place: string;
  readonly weftwise: number | null;
  readonly warpwise: number | null;
}

const usualPlaces = ['start, left', 'start, right', 'middle', 'end, left', 'end, right'];
const untyped = (place: string): Typed => ({
  key: place === '' ? newId() : place,
  place,
  weftwise: null,
  warpwise: null,
});
const usualRows = usualPlaces.map(untyped);
const mostPlaces = 9;

const placeOf = (typed: Typed, overMm: number): Place | null =>
  typed.weftwise === null || typed.warpwise === null || typed.place.trim() === ''
    ? null
    : {
        place: typed.place.trim(),
        weftwise: { count: typed.weftwise, overMm },
        warpwise: { count: typed.warpwise, overMm },
      };

/** Counting on the back with a ruler: the same length at several places. */
export function KnotsSheet({ onClose }: { readonly onClose: () => void }) {
  const { form, act, isBusy, problem } = useForm('knots', onClose);
  const [nodes, setNodes] = useField<'1' | '2' | null>(form, 'nodes', null);
  const [overMm, setOverMm] = useField<number | null>(form, 'overMm', 100);
  const [typed, setTyped] = useField<readonly Typed[]>(form, 'typed', usualRows);
  const places =
    overMm === null ? [] : typed.map((one) => placeOf(one, overMm)).filter((one) => one !== null);
  const nodesPerKnot = nodes === '2' ? 2 : 1;
  const summary =
    places.length === 0 || nodes === null ? null : knotResult({ counted: 'by hand', places, nodesPerKnot });
  const change = (index: number, part: Partial<Typed>) =>
    setTyped(typed.map((one, at) => (at === index ? { ...one, ...part } : one)));
  return (
    <Sheet title="Count knots by hand" isOpen onClose={onClose}>
      <Choice
        label="Nodes you see per knot on the back"
        columns={2}
        options={[
          { value: '2', words: 'Two', hint: 'warps lie level: each knot shows two' },
          { value: '1', words: 'One', hint: 'warps fully depressed: one shows' },
        ]}
        value={nodes}
        onChange={setNodes}
      />
      <NumberField
        label="Length counted over"
        unit="mm"
        least={5}
        most={2000}
        value={overMm}
        onChange={setOverMm}
        hint="the same along both ways; 100 mm is handy"
      />
      {typed.map((one, index) => (
        <fieldset key={one.key} className="knot-place">
          <legend>Place {index + 1}</legend>
          <LineField label="Where" value={one.place} onChange={(place) => change(index, { place })} />
          <div className="pair">
            <NumberField
              label={nodes === '2' ? 'Nodes across' : 'Knots across'}
              unit=""
              least={1}
              most={2000}
              value={one.weftwise}
              onChange={(weftwise) => change(index, { weftwise })}
            />
            <NumberField
              label="Rows along"
              unit=""
              least={1}
              most={2000}
              value={one.warpwise}
              onChange={(warpwise) => change(index, { warpwise })}
            />
          </div>
        </fieldset>
      ))}
      {typed.length < mostPlaces && (
        <Button tone="ghost" onPress={() => setTyped([...typed, untyped('')])}>
          One more place
        </Button>
      )}
      {summary !== null && (
        <p role="status">
          Median {figure(summary.density.weftwisePerM * 0.07)} × {figure(summary.density.warpwisePerM * 0.07)}{' '}
          per 7 cm; across from {figure(summary.weftwisePerM.least * 0.07)} to{' '}
          {figure(summary.weftwisePerM.most * 0.07)}.
        </p>
      )}
      {problem && <ProblemNotice problem={problem} />}
      <Button
        wide
        isDisabled={nodes === null || places.length === 0 || isBusy}
        onPress={() => act({ type: 'KnotsCounted', counted: 'by hand', nodesPerKnot, places })}
      >
        Record {places.length > 0 ? `${places.length} places` : ''}
      </Button>
    </Sheet>
  );
}
