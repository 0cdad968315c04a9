import type { Agent, TestLiquid } from '../core/wash/index.ts';

interface Liquid {
  readonly liquid: TestLiquid;
  readonly agents?: readonly Agent[] | undefined;
}

/**
 * Whether two blots lie in one liquid. Spotters are many: one is told from another by its agents, and one whose
 * agents nobody wrote down is none of those that are known.
 *
 * @source none: rule of this project
 */
export function isOneLiquid(a: Liquid, b: Liquid): boolean {
  if (a.liquid !== b.liquid) return false;
  return (
    a.liquid !== 'spotter' || [...(a.agents ?? [])].sort().join() === [...(b.agents ?? [])].sort().join()
  );
}
