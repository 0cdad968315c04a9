import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

/** A picture on its way to the server. */
export interface KeptPicture {
  readonly id: string;
  /** Which field of which page it was taken for. */
  readonly field: string;
  readonly file: Blob;
}

interface KeptSchema extends DBSchema {
  typed: { key: string; value: unknown };
  pictures: { key: string; value: KeptPicture; indexes: { field: string } };
}

/** Values of everybody as they stand now; the device's own store follows behind. */
const values = new Map<string, unknown>();
const listeners = new Map<string, Set<() => void>>();
let database: IDBPDatabase<KeptSchema> | null = null;
/** Who sits at this device: on a shared tablet nobody sees what another typed. */
let person: string | null = null;

/** The person's own name for a field; each keeps a value of their own under it. */
const own = (key: string): string => `${person ?? ''}/${key}`;

const tell = (key: string) => {
  for (const listener of listeners.get(key) ?? []) listener();
};

/** Shows what this person typed and hides what others did, which waits until they are back. */
export function keepFor(whose: string): void {
  if (whose === person) return;
  person = whose;
  for (const key of listeners.keys()) tell(key);
}

const within = <Value>(promise: Promise<Value>, ms: number): Promise<Value | null> =>
  Promise.race([promise, new Promise<null>((resolve) => setTimeout(() => resolve(null), ms))]);

/**
 * Reads everything typed but not yet acknowledged, before the first page is drawn. A browser that refuses
 * to keep anything (a private window) is no reason to refuse the work: then it is kept until the page closes.
 */
export async function openKept(): Promise<void> {
  try {
    const opening = openDB<KeptSchema>('wefthouse', 2, {
      upgrade(made) {
        // The first version did not say who had typed what, so that nobody could be shown it safely.
        for (const store of [...made.objectStoreNames]) made.deleteObjectStore(store);
        made.createObjectStore('typed');
        made.createObjectStore('pictures', { keyPath: 'id' }).createIndex('field', 'field');
      },
    });
    database = await within(opening, 2000);
    if (database === null) return;
    const transaction = database.transaction('typed');
    for await (const cursor of transaction.store) values.set(cursor.key, cursor.value);
  } catch {
    database = null;
  }
}

export const keptValue = (key: string): unknown => values.get(own(key));

export const isKept = (key: string): boolean => values.has(own(key));

export function keepValue(key: string, value: unknown): void {
  values.set(own(key), value);
  database?.put('typed', value, own(key)).catch(() => undefined);
  tell(key);
}

/** Called once the server has acknowledged what was typed. */
export function forgetValue(key: string): void {
  values.delete(own(key));
  database?.delete('typed', own(key)).catch(() => undefined);
  tell(key);
}

export function onKept(key: string, listener: () => void): () => void {
  const known = listeners.get(key) ?? new Set();
  known.add(listener);
  listeners.set(key, known);
  return () => known.delete(listener);
}

export async function keepPicture(picture: KeptPicture): Promise<void> {
  await database?.put('pictures', { ...picture, field: own(picture.field) }).catch(() => undefined);
}

export async function forgetPicture(id: string): Promise<void> {
  await database?.delete('pictures', id).catch(() => undefined);
}

export async function keptPictures(field: string): Promise<readonly KeptPicture[]> {
  const kept = await database?.getAllFromIndex('pictures', 'field', own(field)).catch(() => []);
  return (kept ?? []).map((picture) => ({ ...picture, field }));
}
