import type { Proof, Session } from '../ports/accounts.ts';
import type { Actor, House } from './house.ts';
import { readWorkshop } from './workshop.ts';

/** A working day without a touch ends a session; a week ends it whatever was touched. */
const idleHours = 12;
const longestHours = 7 * 24;
/** So often at most is it noted that a session is in use: each note costs a write to disk. */
const noteEveryMinutes = 5;

const hoursBetween = (from: string, until: string): number =>
  (Date.parse(until) - Date.parse(from)) / 3_600_000;

/** Begins a session; the token goes to the tablet and is kept here only as its hash. */
export async function beginSession(
  { accounts, secrets, clock }: House,
  person: string,
  proof: Proof,
  startedAt = clock.now(),
): Promise<string> {
  const token = secrets.token();
  const now = clock.now();
  const oldest = new Date(Date.parse(now) - longestHours * 3_600_000).toISOString();
  await accounts.removeSessionsStartedBefore(oldest);
  await accounts.addSession({ token: secrets.digest(token), person, proof, startedAt, seenAt: now });
  return token;
}

/** The session a token opens and who it belongs to, or null when it has ended or the person has left. */
export async function whoIs(
  house: House,
  token: string,
): Promise<{ readonly session: Session; readonly actor: Actor } | null> {
  const { accounts, secrets, clock } = house;
  const session = await accounts.session(secrets.digest(token));
  if (session === null) return null;
  const now = clock.now();
  const isOver =
    hoursBetween(session.seenAt, now) > idleHours || hoursBetween(session.startedAt, now) > longestHours;
  const person = (await readWorkshop(house)).people[session.person];
  if (isOver || person === undefined || person.left) {
    await accounts.removeSession(session.token);
    return null;
  }
  if (hoursBetween(session.seenAt, now) * 60 > noteEveryMinutes)
    await accounts.seeSession(session.token, now);
  const { name, roles } = person;
  return { session, actor: { person: session.person, name, roles, proof: session.proof } };
}

export const endSession = ({ accounts, secrets }: House, token: string): Promise<void> =>
  accounts.removeSession(secrets.digest(token));
