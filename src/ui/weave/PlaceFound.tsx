import { threeFigures } from '../../core/weave/index.ts';
import { weaveNoteWords } from '../../text/weaveWords.ts';
import { Button, Check, Notice, Section } from '../kit/index.ts';
import { AxisTable } from './AxisTable.tsx';
import { axes } from './placeCount.ts';
import { placeDensity } from './rugCount.ts';
import type { Pitches, PlaceCount } from './usePlaceCount.ts';

/** Both axes, a person's confirmation of each, and the other readings one touch away. */
export function PlaceFound({ at }: { readonly at: PlaceCount }) {
  const { counting, found, nodes, scale } = at;
  if (counting === null && found.weftwise === null && found.warpwise === null) return null;
  const { weftwise, warpwise } = found;
  const density =
    weftwise === null || warpwise === null || scale === null || nodes.value === null
      ? null
      : placeDensity(
          { weftwise, warpwise },
          (scale.interval95[1] - scale.interval95[0]) / 2 / scale.mmPerPx,
          nodes.value,
        );
  return (
    <Section title="Counted here">
      <div className="weaveGap">
        <AxisTable count={counting} found={found} nodes={nodes.value} />
        {density === null ? null : (
          <p role="status">
            <b>{threeFigures(density.perDm2)} knots per dm²</b> at this place,{' '}
            {density.interval95.map(threeFigures).join(' to ')}; {threeFigures(density.perDm2 / 15.500031)}{' '}
            per square inch.
          </p>
        )}
        {counting === null ? null : (
          <div className="weaveChecks">
            {axes
              .filter((axis) => !at.isOwn(axis))
              .map((axis) => (
                <Check
                  key={axis}
                  label={
                    axis === 'weftwise' ? 'Every column has one pink stroke' : 'Every row has one blue stroke'
                  }
                  hint="Enlarge the picture and look before you confirm."
                  isSelected={at.confirmed[axis]}
                  onChange={(isSure) => at.confirm(axis, isSure)}
                />
              ))}
          </div>
        )}
        <OtherReadings at={at} />
        {at.notes.length === 0 ? null : (
          <Notice tone="caution" title="To know before using it">
            {at.notes.map((note) => (
              <p key={note}>{weaveNoteWords[note]}</p>
            ))}
          </Notice>
        )}
      </div>
    </Section>
  );
}

/** What repeats perhaps, where the picture leaves it open: none is drawn as counted before it is touched. */
export function OpenReadings({ at }: { readonly at: PlaceCount }) {
  if (at.counting !== null || at.chosen !== null || at.offered.length === 0) return null;
  return (
    <Section title="What it may be">
      <p>The picture leaves it open. Touch a reading to see it drawn; then confirm it, or take another.</p>
      <Readings at={at} pressed={null} />
    </Section>
  );
}

function OtherReadings({ at }: { readonly at: PlaceCount }) {
  return at.counting === null || at.offered.length < 2 ? null : (
    <>
      <p>Other readings of the same picture:</p>
      <Readings at={at} pressed={at.chosen ?? at.offered[0] ?? null} />
    </>
  );
}

function Readings({ at, pressed }: { readonly at: PlaceCount; readonly pressed: Pitches | null }) {
  return (
    <div className="weaveTools">
      {at.offered.map((pair) => (
        <Button
          key={`${pair.weftwisePx} ${pair.warpwisePx}`}
          tone="ghost"
          isPressed={pair === pressed}
          onPress={() => at.choose(pair)}
        >
          {threeFigures(pair.weftwisePx)} × {threeFigures(pair.warpwisePx)} px
        </Button>
      ))}
    </div>
  );
}
