import { findingCodes, stainClasses } from '../../core/wash/index.ts';
import { Button, Check, ManyChoice, NumberField, newId, Picker, Section } from '../kit/index.ts';
import type { FactsProps } from './RugFields.tsx';

/** What was found on it: a rug nobody has looked over may hold anything. */
export function ConditionFields({ typed, change }: FactsProps) {
  const { stains } = typed;
  return (
    <Section title="Condition">
      <div className="form">
        <Check
          label="Looked over, face and back"
          hint="Without it no wet step is possible."
          isSelected={typed.isLookedOver}
          onChange={(isLookedOver) => change({ isLookedOver })}
        />
        {typed.isLookedOver ? (
          <details className="more">
            <summary>
              {typed.findings.length === 0
                ? 'Nothing found. Choose what was found'
                : typed.findings.join(', ')}
            </summary>
            <ManyChoice
              label="Found"
              options={findingCodes.map((code) => ({ value: code, words: code }))}
              value={typed.findings}
              onChange={(findings) => change({ findings })}
            />
          </details>
        ) : null}
        {stains.map((one) => (
          <fieldset key={one.id} className="part bareSet">
            <legend className="stepno">Stain</legend>
            <div className="pad">
              <Picker
                label="Kind of stain"
                options={stainClasses}
                value={one.stain}
                onChange={(word) =>
                  change({
                    stains: stains.map((other) =>
                      other.id === one.id
                        ? { ...other, stain: stainClasses.find((known) => known === word) ?? 'unknown' }
                        : other,
                    ),
                  })
                }
              />
              <NumberField
                label="Area"
                unit="cm²"
                least={0.1}
                most={100_000}
                value={one.areaCm2}
                onChange={(areaCm2) =>
                  change({
                    stains: stains.map((other) => (other.id === one.id ? { ...other, areaCm2 } : other)),
                  })
                }
              />
            </div>
            <div className="actions">
              <Button
                tone="ghost"
                onPress={() => change({ stains: stains.filter(({ id }) => id !== one.id) })}
              >
                Take the stain away
              </Button>
            </div>
          </fieldset>
        ))}
        <Button
          tone="ghost"
          onPress={() => change({ stains: [...stains, { id: newId(), stain: 'unknown', areaCm2: null }] })}
        >
          Add a stain
        </Button>
      </div>
    </Section>
  );
}
