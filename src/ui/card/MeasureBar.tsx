import { useState } from 'react';
import type { ShownProblem } from '../call/index.ts';
import { Button, goToSlip, NumberField, ProblemNotice } from '../kit/index.ts';
import { useCards } from './useCards.ts';

/** The length of a printed card's 100 mm bar, measured once and kept under its serial. */
export function MeasureBar(props: {
  readonly serial: string;
  readonly onMeasured?: (barMm: number) => void;
}) {
  const { measure } = useCards();
  const [barMm, setBarMm] = useState<number | null>(null);
  const [problem, setProblem] = useState<ShownProblem | null>(null);
  const [isBusy, setBusy] = useState(false);
  const keep = async () => {
    if (barMm === null || goToSlip()) return;
    setBusy(true);
    const kept = await measure({ serial: props.serial, barMm });
    setBusy(false);
    setProblem(kept.ok ? null : kept.problem);
    if (kept.ok) props.onMeasured?.(barMm);
  };
  return (
    <>
      <NumberField
        label="Its 100 mm bar measures"
        unit="mm"
        least={90}
        most={110}
        value={barMm}
        onChange={setBarMm}
        hint="With a steel ruler, to a fifth of a millimetre. Kept for this card from now on."
      />
      <ProblemNotice problem={problem} />
      <Button isDisabled={barMm === null || isBusy} onPress={keep}>
        Keep the measure
      </Button>
    </>
  );
}
