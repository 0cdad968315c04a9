import { Button, Choice, Notice, NumberField, Section } from '../kit/index.ts';
import type { ScaleWay, TypedScale } from './weaveScale.ts';

interface ScaleProps {
  readonly typed: TypedScale;
  readonly onType: (changed: Partial<TypedScale>) => void;
  readonly isRead: boolean;
  readonly onTap: () => void;
}

/** How large the picture is, as far as a person knows it. */
export function ScaleSection({ typed, onType, isRead, onTap }: ScaleProps) {
  return (
    <Section title="Scale">
      <Choice<ScaleWay>
        label="How large the picture is"
        columns={1}
        options={[
          { value: 'unknown', words: 'Not known', hint: 'Only repeats and pixels are stated.' },
          { value: 'tapped', words: 'Two places a known length apart' },
          { value: 'typed', words: 'Millimetres per pixel' },
        ]}
        value={typed.way}
        onChange={(way) => onType({ way })}
      />
      {typed.way === 'tapped' ? (
        <>
          <Button tone="ghost" onPress={onTap}>
            {typed.taps === null ? 'Tap the two places' : 'Tap them anew'}
          </Button>
          <NumberField
            label="Between them"
            unit="mm"
            least={5}
            most={5000}
            value={typed.betweenMm}
            onChange={(betweenMm) => onType({ betweenMm })}
            hint="The ruler must lie flat on the rug. Taps within 2 px of the screen and the ruler within 0.5 mm are assumed."
          />
          {typed.taps !== null && typed.betweenMm !== null && !isRead ? (
            <Notice tone="caution" title="These taps give no scale.">
              <p>They lie too close, or make a pixel larger than 5 mm. Tap places farther apart.</p>
            </Notice>
          ) : null}
        </>
      ) : null}
      {typed.way === 'typed' ? (
        <NumberField
          label="Scale of the original photograph"
          unit="mm per px"
          least={0.001}
          most={5}
          value={typed.mmPerPx}
          onChange={(mmPerPx) => onType({ mmPerPx })}
          hint="Taken as exact: its own error is not in the intervals."
        />
      ) : null}
    </Section>
  );
}
