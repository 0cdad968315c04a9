import {
  asCalciumCarbonate,
  hardnessBinders,
  hardnessConsumed,
  peroxideVolumes,
  surfactantByArea,
  surfactantByBath,
  usualDoseUncertainty,
} from '../../core/chemistry/index.ts';
import { rulebookOf } from '../../dossier/index.ts';
import { useSettings } from '../call/index.ts';
import { Choice, Notice, NumberField, Picker, ProblemNotice, Section } from '../kit/index.ts';
import { type MixingProps, massText, unknownWater } from './mixing.ts';
import { WaterField } from './WaterField.tsx';

/** Detergent by the rug's area or by the strength of its bath, and the volumes of a peroxide. */
export function DetergentPart({ mixing, set }: MixingProps) {
  const { detergentBy, peroxideGPerL } = mixing;
  return (
    <>
      <Section title="Detergent">
        <div className="form">
          <Choice
            label="Dosed by"
            columns={2}
            options={[
              { value: 'area', words: 'Area of the rug' },
              { value: 'bath', words: 'Strength of the bath' },
            ]}
            value={detergentBy}
            onChange={(value) => set({ detergentBy: value })}
          />
        </div>
        {detergentBy === 'area' ? <ByArea {...{ mixing, set }} /> : <ByBath {...{ mixing, set }} />}
      </Section>
      <SoapPart {...{ mixing, set }} />
      <Section title="Peroxide">
        <div className="form">
          <NumberField
            label="Hydrogen peroxide in the bottle"
            unit="g/L"
            hint="30 g/L is 3 %."
            least={0}
            most={500}
            value={peroxideGPerL}
            onChange={(value) => set({ peroxideGPerL: value })}
          />
        </div>
        {peroxideGPerL === null ? null : (
          <p>
            {(peroxideGPerL / 10).toFixed(1)} % peroxide is{' '}
            {peroxideVolumes(peroxideGPerL / 34.015).toFixed(0)} volumes. On a rug at most 3 %, never warm.
          </p>
        )}
      </Section>
    </>
  );
}

function ByArea({ mixing: { areaM2, litres } }: MixingProps) {
  const { detergentGPerM2 } = rulebookOf(useSettings()).shop;
  if (areaM2 === null || litres === null) {
    return <p className="why">Give the water of the bath and the rug’s area above.</p>;
  }
  const found = surfactantByArea(areaM2, litres, detergentGPerM2);
  if (!found.ok) return <ProblemNotice problem={found.problem} />;
  const { grams, gPerL } = found.value;
  return (
    <p>
      Detergent concentrate {massText(grams.least)} to {massText(grams.most)}: the bath is then{' '}
      {gPerL.least.toFixed(1)} to {gPerL.most.toFixed(1)} g/L ({detergentGPerM2.least} to{' '}
      {detergentGPerM2.most} g/m², workshop setting; the supplier’s sheet comes first).
    </p>
  );
}

function ByBath({ mixing, set }: MixingProps) {
  const { litres, activeGPerL, activePercent } = mixing;
  const found =
    litres === null || activeGPerL === null || activePercent === null
      ? null
      : surfactantByBath(activeGPerL, litres, activePercent / 100, usualDoseUncertainty.strength);
  return (
    <>
      <div className="form">
        <NumberField
          label="Active detergent wanted in the bath"
          unit="g/L"
          least={0.01}
          most={50}
          value={activeGPerL}
          onChange={(value) => set({ activeGPerL: value })}
        />
        <NumberField
          label="Active detergent in the product"
          unit="%"
          hint="By mass, from its label or data sheet."
          least={0.1}
          most={100}
          value={activePercent}
          onChange={(value) => set({ activePercent: value })}
        />
      </div>
      {found === null ? (
        <p className="why">Give the water of the bath, the strength wanted and the product’s own.</p>
      ) : found.ok ? (
        <>
          <p className="amt">
            {massText(found.value.grams)} <small>of the product</small>
          </p>
          <p>
            {massText(found.value.interval[0])} to {massText(found.value.interval[1])}, with its strength ±
            {usualDoseUncertainty.strength * 100} %.
          </p>
        </>
      ) : (
        <ProblemNotice problem={found.problem} />
      )}
    </>
  );
}

/** What hard water uses up of a soap or softener. */
function SoapPart({ mixing, set }: MixingProps) {
  const { litres, hardness, hardnessUnit, soap } = mixing;
  const worst = unknownWater.hardness.most;
  const used =
    litres === null
      ? null
      : hardnessConsumed(
          hardness === null ? { value: worst, unit: 'mg/L CaCO₃' } : { value: hardness, unit: hardnessUnit },
          litres,
          soap,
        );
  return (
    <Section title="Soap in hard water">
      <div className="form">
        <WaterField
          label="Hardness of the water"
          hint="Calcium and magnesium, from the water supplier’s sheet."
          value={hardness}
          unit={hardnessUnit}
          onChange={(value, unit) => set({ hardness: value, hardnessUnit: unit })}
        />
        <Picker
          label="Soap or softener"
          options={hardnessBinders.map((name) => ({ value: name, words: name }))}
          value={soap}
          onChange={(value) => set({ soap: value })}
        />
      </div>
      {used === null ? (
        <p className="why">Give the water of the bath above.</p>
      ) : used.ok ? (
        <>
          <p>
            The water uses up {massText(used.value.grams)} of {soap} before any is left to work
            {hardness === null
              ? ''
              : `, at ${asCalciumCarbonate(hardness, hardnessUnit).toFixed(0)} mg/L CaCO₃`}
            . For synthetic detergents, citrate and phosphates there is no fixed figure.
          </p>
          {hardness === null ? (
            <Notice tone="caution" title="The water’s hardness is not known.">
              <p>{worst} mg/L CaCO₃ is assumed, the hardest to reckon with.</p>
            </Notice>
          ) : null}
        </>
      ) : (
        <ProblemNotice problem={used.problem} />
      )}
    </Section>
  );
}
