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

/** Values as they stand now; the device's own store follows behind. */
const values = new Map<string, unknown>();
const listeners = new Map<string, Set<() => void>>();
let database: IDBPDatabase<KeptSchema> | null = null;

const within = <Value>(promise: Promise<Value>, ms: number): Promise<Value | null> =>
  Promise.race([promise, new Promise<null>((resolve) => setTimeout(() => resolve(null), ms))]);

/**
 * Reads everything typed but not yet acknowledged, before the first page is drawn. A browser that refuses
 * to keep anything (a private window) is no reason to refuse the work: then it is kept until the page closes.
 */
export async function openKept(): Promise<void> {
  try {
    const opening = openDB<KeptSchema>('wefthouse', 1, {
      upgrade(made) {
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

export const keptValue = (key: string): unknown => values.get(key);

export const isKept = (key: string): boolean => values.has(key);

const tell = (key: string) => {
  for (const listener of listeners.get(key) ?? []) listener();
};

export function keepValue(key: string, value: unknown): void {
  values.set(key, value);
  database?.put('typed', value, key).catch(() => undefined);
  tell(key);
}

/** Called once the server has acknowledged what was typed. */
export function forgetValue(key: string): void {
  values.delete(key);
  database?.delete('typed', key).catch(() => undefined);
  tell(key);
}

export function onKept(key: string, listener: () => void): () => void {
  const known = listeners.get(key) ?? new Set();
  known.add(listener);
  listeners.set(key, known);
  return () => known.delete(listener);
}

export async function keepPicture(picture: KeptPicture): Promise<void> {
  await database?.put('pictures', picture).catch(() => undefined);
}

export async function forgetPicture(id: string): Promise<void> {
  await database?.delete('pictures', id).catch(() => undefined);
}

export async function keptPictures(field: string): Promise<readonly KeptPicture[]> {
  return (await database?.getAllFromIndex('pictures', 'field', field).catch(() => [])) ?? [];
}
