import type { DryAnswer } from './dryAnswer.ts';
import type { DryScenario } from './scenario.ts';

/**
 * A scenario with what its readings taught put in their place, so that one run tells the likely course: a
 * change in the room is then answered at once, and how sure it is can follow.
 *
 * @param scenario - with readings
 * @param answer - its forecast, the unknowns drawn
 * @returns the same room without draws and readings; a rug the answer does not know stays as it is
 * @source none: means of what is believed after the readings (roomBelief)
 */
export function asBelieved(scenario: DryScenario, answer: DryAnswer): DryScenario {
  const roomG = answer.g?.likely ?? scenario.room.g ?? 1;
  return {
    ...scenario,
    uncertainty: false,
    room: { ...scenario.room, g: 1 },
    rugs: scenario.rugs.map(({ readings: _readings, ...rug }) => {
      const likely = answer.rugs.find(({ id }) => id === rug.id)?.spread?.likely;
      return likely === undefined ? { ...rug, g: roomG * (rug.g ?? 1) } : { ...rug, ...likely };
    }),
  };
}
