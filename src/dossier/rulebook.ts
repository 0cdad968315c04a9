import { type Rulebook, type RuleChange, rulebookWith, shippedRulebook } from '../core/wash/index.ts';
import { canonicalJson, hashOfText } from './seal.ts';
import type { WorkshopSettings } from './workshopFacts.ts';

/** The rulebook of these changes made last: every plan of a moment is judged by the same one. */
let last: { readonly key: string; readonly book: Rulebook } = { key: '[]', book: shippedRulebook };

const byAddress = (a: RuleChange, b: RuleChange): number => (a.address < b.address ? -1 : 1);

/**
 * The workshop's rulebook: the delivered one with the owner's changes. Its version names the delivered
 * edition, how many values differ, and a fingerprint of them, so that two plans judged by the same rules
 * say the same.
 *
 * @source none: rule of this project, docs/decisions/0009-the-rulebook-is-a-value.md
 */
export function rulebookOf({ ruleChanges = [] }: Pick<WorkshopSettings, 'ruleChanges'>): Rulebook {
  const changes = [...ruleChanges].sort(byAddress);
  const key = canonicalJson(changes);
  if (last.key === key) return last.book;
  const count = `${changes.length} ${changes.length === 1 ? 'change' : 'changes'}`;
  const version = `${shippedRulebook.version} with ${count} (${hashOfText(key).slice(0, 8)})`;
  const book = changes.length === 0 ? shippedRulebook : rulebookWith(changes, version);
  last = { key, book };
  return book;
}

/** The settings as they would be with one value of the rulebook changed; null takes the change back. */
export function settingsWithRule(settings: WorkshopSettings, change: RuleChange): WorkshopSettings {
  const others = (settings.ruleChanges ?? []).filter(({ address }) => address !== change.address);
  return { ...settings, ruleChanges: change.value === null ? others : [...others, change] };
}
