import type { SignInRequest, SwitchRequest } from '../contract/index.ts';
import type { Person, WorkshopStanding } from '../dossier/workshopFacts.ts';
import type { Session } from '../ports/accounts.ts';
import type { AccessProblem } from '../text/accessWords.ts';
import { done, type Result, refused } from '../units/index.ts';
import type { House } from './house.ts';
import { lockedUntil, opensAt } from './secretRules.ts';
import { beginSession } from './session.ts';
import { readWorkshop } from './workshop.ts';

const plainName = (name: string): string => name.normalize('NFKC').trim().toLowerCase();

/** The person of a name, spelling of capitals aside, who has not left. */
export const personNamed = ({ people }: WorkshopStanding, name: string): Person | undefined =>
  Object.values(people).find((person) => !person.left && plainName(person.name) === plainName(name));

/** A day without a try forgets the wrong ones before it. */
const forgetAfterHours = 24;

/** Counts a try, judges it, and takes it back when it was right. */
async function judged(
  { accounts, clock }: House,
  key: string,
  isRight: () => Promise<boolean>,
): Promise<AccessProblem | null> {
  const now = clock.now();
  await accounts.forgetTriesBefore(new Date(Date.parse(now) - forgetAfterHours * 3_600_000).toISOString());
  const opens = await accounts.admitTry(key, now, opensAt);
  if (opens !== null) return lockedUntil(opens, now);
  if (!(await isRight())) return { code: 'sign-in-refused', facts: {} };
  await accounts.clearTries(key);
  return null;
}

/** Signs in by name and passphrase; an unknown name is answered like a wrong passphrase, and as slowly. */
export async function signIn(
  house: House,
  { name, passphrase }: SignInRequest,
): Promise<Result<{ readonly token: string; readonly person: Person }, AccessProblem>> {
  const workshop = await readWorkshop(house);
  if (Object.keys(workshop.people).length === 0) return refused('set-up-first', {});
  const person = personNamed(workshop, name);
  const key = person?.person ?? `name/${house.secrets.digest(plainName(name))}`;
  const problem = await judged(house, key, async () => {
    const account = person === undefined ? null : await house.accounts.account(person.person);
    return house.secrets.matches(passphrase, account?.passphrase ?? null);
  });
  if (problem !== null) return { ok: false, problem };
  if (person === undefined) return refused('sign-in-refused', {});
  return done({ token: await beginSession(house, person.person, 'passphrase'), person });
}

/** Proves by PIN that a colleague is here, without handing the tablet over. */
export async function provePin(
  house: House,
  { person, pin }: SwitchRequest,
): Promise<Result<Person, AccessProblem>> {
  const wanted = (await readWorkshop(house)).people[person];
  if (wanted === undefined || wanted.left) return refused('person-unknown', { person });
  const problem = await judged(house, person, async () => {
    const account = await house.accounts.account(person);
    return house.secrets.matches(pin, account?.pin ?? null);
  });
  return problem === null ? done(wanted) : { ok: false, problem };
}

/** Hands a tablet's session to another person by PIN. It ends when the session would have ended. */
export async function switchPerson(
  house: House,
  session: Session,
  request: SwitchRequest,
): Promise<Result<{ readonly token: string; readonly person: Person }, AccessProblem>> {
  const proven = await provePin(house, request);
  if (!proven.ok) return proven;
  const token = await beginSession(house, request.person, 'pin', session.startedAt);
  await house.accounts.removeSession(session.token);
  return done({ token, person: proven.value });
}

/** Makes the first account, for whoever can read the code from the terminal. */
export const setUpTries = (house: House, given: string, code: string): Promise<AccessProblem | null> =>
  judged(house, 'set-up', async () => {
    const plain = (text: string) => house.secrets.digest(text.toUpperCase().replace(/[^0-9A-Z]/g, ''));
    return plain(given) === plain(code);
  });
