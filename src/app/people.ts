import type {
  Colleague,
  FirstOwnerRequest,
  PersonChange,
  PersonRequest,
  SecretChange,
  SettingsRequest,
} from '../contract/index.ts';
import type { AppendProblem } from '../dossier/recordProblem.ts';
import type { Person, WorkshopFact, WorkshopStanding } from '../dossier/workshopFacts.ts';
import type { AccessProblem } from '../text/accessWords.ts';
import { done, type Result, refused } from '../units/index.ts';
import type { Actor, House } from './house.ts';
import { passphraseProblem, pinProblem } from './secretRules.ts';
import { beginSession } from './session.ts';
import { personNamed, setUpTries } from './signIn.ts';
import { readWorkshop, recordWorkshop } from './workshop.ts';

type Refusal = AccessProblem | AppendProblem;

const nameProblem = (standing: WorkshopStanding, name: string, person: string): AccessProblem | null => {
  const other = personNamed(standing, name);
  return other === undefined || other.person === person ? null : { code: 'name-in-use', facts: { name } };
};

/** Makes the owner's account on the first start. The code is the one the terminal shows; null once it is used. */
export async function addFirstOwner(
  house: House,
  code: string | null,
  { code: given, name, passphrase, workshopName }: FirstOwnerRequest,
): Promise<Result<{ readonly token: string; readonly person: Person }, Refusal>> {
  const before = await readWorkshop(house);
  if (code === null || Object.keys(before.people).length > 0) return refused('set-up-done', {});
  const problem = passphraseProblem(passphrase) ?? codeProblem(await setUpTries(house, given, code));
  if (problem !== null) return { ok: false, problem };
  const person = house.ids.next();
  await house.accounts.keepAccount({ person, passphrase: await house.secrets.hash(passphrase), pin: null });
  const recorded = await recordWorkshop<AccessProblem>(house, person, ({ people }) =>
    Object.keys(people).length > 0
      ? refused('set-up-done', {})
      : done([
          { type: 'PersonAdded', person, name, roles: ['owner'] },
          { type: 'SettingsChanged', settings: { name: workshopName } },
        ]),
  );
  if (!recorded.ok) return recorded;
  return done({
    token: await beginSession(house, person, 'passphrase'),
    person: { person, name, roles: ['owner'], left: false },
  });
}

const codeProblem = (problem: AccessProblem | null): AccessProblem | null =>
  problem?.code === 'sign-in-refused' ? { code: 'set-up-code-wrong', facts: {} } : problem;

/** Everybody who works or worked here, as screens show them. */
export async function listPeople(house: House): Promise<readonly Colleague[]> {
  const { people } = await readWorkshop(house);
  return Promise.all(
    Object.values(people).map(async (person) => {
      const account = await house.accounts.account(person.person);
      return { ...person, hasPin: account !== null && account.pin !== null };
    }),
  );
}

export async function addPerson(
  house: House,
  actor: Actor,
  { person, name, roles, passphrase, pin }: PersonRequest,
): Promise<Result<WorkshopStanding, Refusal>> {
  const before = await readWorkshop(house);
  const problem =
    before.people[person] !== undefined
      ? ({ code: 'name-in-use', facts: { name } } as const)
      : (nameProblem(before, name, person) ??
        passphraseProblem(passphrase) ??
        (pin === undefined ? null : pinProblem(pin)));
  if (problem !== null) return { ok: false, problem };
  const { secrets, accounts } = house;
  const hashes = {
    passphrase: await secrets.hash(passphrase),
    pin: pin === undefined ? null : await secrets.hash(pin),
  };
  await accounts.keepAccount({ person, ...hashes });
  return recordWorkshop(house, actor.person, (standing): Result<readonly WorkshopFact[], AccessProblem> => {
    const taken = nameProblem(standing, name, person);
    return taken === null
      ? done([{ type: 'PersonAdded', person, name, roles }])
      : { ok: false, problem: taken };
  });
}

/** Changes a name or roles, or notes that somebody has left, which also ends their sessions. */
export async function changePerson(
  house: House,
  actor: Actor,
  person: string,
  { name, roles, left }: PersonChange,
): Promise<Result<WorkshopStanding, Refusal>> {
  const recorded = await recordWorkshop(
    house,
    actor.person,
    (standing): Result<readonly WorkshopFact[], AccessProblem> => {
      const known = standing.people[person];
      if (known === undefined) return refused('person-unknown', { person });
      const others = Object.values(standing.people).filter((one) => one.person !== person && !one.left);
      const staysOwner = left !== true && roles.includes('owner');
      if (!staysOwner && !others.some((one) => one.roles.includes('owner'))) {
        return refused('last-owner', { name: known.name });
      }
      const taken = left === true ? null : nameProblem(standing, name, person);
      if (taken !== null) return { ok: false, problem: taken };
      return done([
        left === true ? { type: 'PersonLeft', person } : { type: 'PersonChanged', person, name, roles },
      ]);
    },
  );
  if (recorded.ok && left === true) await house.accounts.removeAccount(person);
  return recorded;
}

/** Sets a passphrase or PIN anew: one's own, or by an owner anybody's. Other sessions of theirs end. */
export async function changeSecret(
  house: House,
  person: string,
  keepSession: string | null,
  { passphrase, pin }: SecretChange,
): Promise<Result<null, AccessProblem>> {
  const { accounts, secrets } = house;
  const [known, account] = [(await readWorkshop(house)).people[person], await accounts.account(person)];
  if (known === undefined || known.left) return refused('person-unknown', { person });
  // Somebody who left and came back has no account any more: then the passphrase is what they need first.
  const problem =
    (passphrase === undefined
      ? account === null
        ? passphraseProblem('')
        : null
      : passphraseProblem(passphrase)) ?? (pin === undefined || pin === null ? null : pinProblem(pin));
  if (problem !== null) return { ok: false, problem };
  await accounts.keepAccount({
    person,
    passphrase: passphrase === undefined ? (account?.passphrase ?? '') : await secrets.hash(passphrase),
    pin: pin === undefined ? (account?.pin ?? null) : pin === null ? null : await secrets.hash(pin),
  });
  await accounts.removeSessions(person, keepSession);
  await accounts.clearTries(person);
  return done(null);
}

export const changeSettings = (
  house: House,
  actor: Actor,
  { settings, why }: SettingsRequest,
): Promise<Result<WorkshopStanding, AppendProblem>> =>
  recordWorkshop(house, actor.person, () =>
    done([{ type: 'SettingsChanged', settings, ...(why === undefined ? {} : { why }) }]),
  );
