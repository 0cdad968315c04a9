import type {
  AffectedRug,
  RulebookAnswer,
  RuleChangeRequest,
  RulePreviewAnswer,
  RulePreviewRequest,
} from '../contract/index.ts';
import { judgeRuleChange, type RuleChange, type RuleProblem } from '../core/wash/index.ts';
import { standingOf } from '../dossier/evolve.ts';
import { planChangeOf } from '../dossier/planChange.ts';
import type { AppendProblem } from '../dossier/recordProblem.ts';
import type { RugRow } from '../dossier/rugRow.ts';
import { rulebookOf, settingsWithRule } from '../dossier/rulebook.ts';
import { canonicalJson } from '../dossier/seal.ts';
import type { WorkshopStanding } from '../dossier/workshopFacts.ts';
import { done, type Result } from '../units/index.ts';
import type { Actor, House } from './house.ts';
import { mostInHouse } from './rugs.ts';
import { readWorkshop, recordWorkshop } from './workshop.ts';

const answerOf = ({ settings, ruleHistory, people }: WorkshopStanding): RulebookAnswer => ({
  version: rulebookOf(settings).version,
  history: ruleHistory.map((change) => ({ ...change, byName: people[change.by]?.name ?? change.by })),
});

/** Which rulebook holds, and how it came to be. */
export const readRulebook = async (house: House): Promise<RulebookAnswer> =>
  answerOf(await readWorkshop(house));

/** A change as it is kept: the delivered value written out is no change. */
function keptChange({ address, value }: RulePreviewRequest): Result<RuleChange, RuleProblem> {
  const change = { address, value: value ?? null };
  const judged = judgeRuleChange(change);
  if (!judged.ok) return judged;
  const same = canonicalJson(judged.value.value) === canonicalJson(change.value);
  return done(same ? { address, value: null } : change);
}

/** Plans every rug in the house under the rules now and with the change, before anybody records it. */
export async function previewRule(
  house: House,
  request: RulePreviewRequest,
): Promise<Result<RulePreviewAnswer, RuleProblem>> {
  const change = keptChange(request);
  if (!change.ok) return change;
  const { ledger, clock } = house;
  const { settings } = await readWorkshop(house);
  const after = settingsWithRule(settings, change.value);
  const rows = await ledger.list({ kind: 'rug', inHouse: true, limit: mostInHouse });
  const affected: AffectedRug[] = [];
  for (const { stream, tag, body } of rows) {
    const moved = planChangeOf(standingOf(await ledger.read(stream)), settings, after, clock.now());
    if (moved === null) continue;
    const { number, title } = body as RugRow;
    affected.push({ rug: stream.slice('rug/'.length), number, title, tag, ...moved });
  }
  return done({ looked: rows.length, affected });
}

/** Records an owner's change of one value of the rulebook, with the reason. */
export async function changeRule(
  house: House,
  actor: Actor,
  { why, ...request }: RuleChangeRequest,
): Promise<Result<RulebookAnswer, RuleProblem | AppendProblem>> {
  const recorded = await recordWorkshop<RuleProblem>(house, actor.person, ({ settings }) => {
    const change = keptChange(request);
    if (!change.ok) return change;
    const { address, value } = change.value;
    const from = settings.ruleChanges?.find((one) => one.address === address)?.value ?? null;
    if (canonicalJson(from) === canonicalJson(value)) return done([]);
    return done([{ type: 'RuleChanged', address, from, to: value, why }]);
  });
  return recorded.ok ? done(answerOf(recorded.value)) : recorded;
}
