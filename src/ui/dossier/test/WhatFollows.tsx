import type { WashPlan } from '../../../core/wash/index.ts';
import { Button } from '../../kit/index.ts';
import { useDossier } from '../dossierView.ts';
import { NamedLines } from './NamedLines.tsx';

/** The method as it would be once every missing blot came out clean; null while the plan does not hang on blots. */
export const methodOnceTested = ({ loosens }: WashPlan): string | null => {
  const tests = loosens.find(({ fact }) => fact === 'dye tests');
  const method = tests?.allows.find(({ axis }) => axis === 'method');
  return method === undefined ? null : String(method.to);
};

/** Which limit caps the method now, in the words of its rule. */
export const methodCaps = ({ limits }: WashPlan) =>
  limits.filter(({ axis, binding }) => axis === 'method' && binding);

/** What the blots amount to: the wash they leave, and why it is no wetter. */
export function WhatFollows() {
  const { plan, missingTests } = useDossier();
  if (!plan.ok) return null;
  const caps = methodCaps(plan.value);
  const hoped = methodOnceTested(plan.value);
  return (
    <div className="what-follows">
      <h3>What follows for the wash</h3>
      <NamedLines
        lines={[
          {
            name: 'Wettest method now',
            value: plan.value.method,
            why:
              caps.map(({ about, because }) => `${about}: ${because}`)[0] ??
              'nothing on record forbids the wettest method',
          },
          ...(hoped === null
            ? []
            : [
                {
                  name: 'If the missing blots come out clean',
                  value: hoped,
                  why: `${missingTests.length} still to make or to make again`,
                },
              ]),
        ]}
      />
      <Button
        tone="ghost"
        wide
        onPress={() => document.getElementById('plan')?.scrollIntoView({ behavior: 'smooth' })}
      >
        Go to the plan
      </Button>
    </div>
  );
}
