import { useState } from 'react';
import { type RugFactOf, sizeOf, stopsRaised } from '../../dossier/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { figure, lengthWords } from '../dossier/figures.ts';
import { Part } from '../dossier/Part.tsx';
import { useField, useForm } from '../dossier/useForm.ts';
import { Button, ProblemNotice, Sheet, When } from '../kit/index.ts';
import { LengthField } from '../receive/measureFields.tsx';

const change = (mm: number, intakeMm: number): string => {
  const percent = (mm / intakeMm - 1) * 100;
  return `${percent > 0 ? '+' : ''}${figure(percent)} %`;
};

/** Whether the wet rug keeps its size: shrinking or stretching by more than 1 % stops the wash. */
export function SizePart() {
  const { standing, visit, open, settings } = useDossier();
  const [measuring, setMeasuring] = useState(false);
  const intake = sizeOf(standing, 'intake');
  if (visit === null || intake === null) return null;
  const { units } = settings;
  return (
    <Part id="size" title="Size while wet">
      <p className="why">
        At intake {lengthWords(intake.lengthMm, units)} × {lengthWords(intake.widthMm, units)}. A change of
        more than 1 % stops the wash (workshop setting).
      </p>
      <ul className="plain-list">
        {visit.lengths.map(({ entry, when, lengthMm, widthMm }) => (
          <li key={entry}>
            <When at={when} />
            {lengthMm === undefined
              ? ''
              : ` length ${lengthWords(lengthMm, units)} (${change(lengthMm, intake.lengthMm)})`}
            {widthMm === undefined
              ? ''
              : ` width ${lengthWords(widthMm, units)} (${change(widthMm, intake.widthMm)})`}
          </li>
        ))}
      </ul>
      {open && (
        <Button wide tone="ghost" onPress={() => setMeasuring(true)}>
          Measure it wet
        </Button>
      )}
      {measuring && <SizeSheet onClose={() => setMeasuring(false)} />}
    </Part>
  );
}

function SizeSheet({ onClose }: { readonly onClose: () => void }) {
  const { standing, settings, now } = useDossier();
  const { form, act, isBusy, problem } = useForm('size while wet', onClose);
  const [lengthMm, setLength] = useField<number | null>(form, 'length', null);
  const [widthMm, setWidth] = useField<number | null>(form, 'width', null);
  const empty = lengthMm === null && widthMm === null;
  const fact: RugFactOf<'LengthChecked'> = {
    type: 'LengthChecked',
    ...(lengthMm === null ? {} : { lengthMm }),
    ...(widthMm === null ? {} : { widthMm }),
  };
  const stops = !empty && stopsRaised(standing, fact, { now, settings }).length > 0;
  return (
    <Sheet title="Size while wet" isOpen onClose={onClose}>
      <LengthField label="Length" units={settings.units} value={lengthMm} onChange={setLength} />
      <LengthField label="Width" units={settings.units} value={widthMm} onChange={setWidth} />
      <p className="why">Without fringe, laid flat and not pulled, along the same lines as at intake.</p>
      <ProblemNotice problem={problem} />
      {stops && (
        <p className="verdict stop" role="alert">
          <span aria-hidden="true">▲ </span>
          Recording this stops the wash on every tablet.
        </p>
      )}
      <Button wide tone={stops ? 'stop' : 'act'} isDisabled={empty || isBusy} onPress={() => act(fact)}>
        Record the size
      </Button>
    </Sheet>
  );
}
