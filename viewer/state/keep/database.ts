/** The browser's own database: every operation is one transaction, and throws if the database fails. */
import { openDB, type DBSchema, type IDBPDatabase, type IDBPTransaction } from 'idb';
import type { NamedFiles } from '../../../engine/index.ts';
import { mayWrite } from './lease.ts';
import type { KeptDesign, KeptState, Lease } from './records.ts';
import { sortDesigns, statesToDrop } from './retention.ts';

type Bytes = Uint8Array<ArrayBuffer>;
type StateKey = [designId: string, at: number];
type FileKey = [designId: string, fileId: string];

interface Schema extends DBSchema {
  designs: { key: string; value: KeptDesign };
  states: { key: StateKey; value: KeptState; indexes: { textSum: number } };
  texts: { key: StateKey; value: string };
  files: { key: FileKey; value: Bytes };
  leases: { key: string; value: Lease };
}

type Store = 'designs' | 'states' | 'texts' | 'files' | 'leases';
const STORES: Store[] = ['designs', 'states', 'texts', 'files', 'leases'];
type Writing = IDBPTransaction<Schema, Store[], 'readwrite'>;

const NAME = 'evenfall-designs';
const VERSION = 1;

let opened: Promise<IDBPDatabase<Schema>> | null = null;

/** The open database; tried again after it failed or was closed by the browser. */
export async function database(): Promise<IDBPDatabase<Schema>> {
  if (typeof indexedDB === 'undefined') throw new Error('this browser has no database');
  const closed = (): void => void (opened = null);
  opened ??= openDB<Schema>(NAME, VERSION, {
    upgrade(db) {
      db.createObjectStore('designs', { keyPath: 'id' });
      db.createObjectStore('states', { keyPath: ['designId', 'at'] }).createIndex('textSum', 'textSum');
      db.createObjectStore('texts');
      db.createObjectStore('files');
      db.createObjectStore('leases', { keyPath: 'designId' });
    },
    blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
    terminated: closed,
  });
  opened.catch(closed);
  return opened;
}

/** All keys of one design, in the stores whose keys start with its name. */
const ofDesign = (id: string): IDBKeyRange => IDBKeyRange.bound([id], [id, []]);

/** A state to write, with the text and the files that belong to it. */
export interface FullState {
  readonly state: KeptState;
  readonly text: string;
  /** bytes by their keys */
  readonly files: ReadonlyMap<string, Bytes>;
}

/** Writes a file that is not there yet; under one key there are always the same bytes. */
async function putOnce(tx: Writing, key: FileKey, bytes: Bytes): Promise<void> {
  const store = tx.objectStore('files');
  if ((await store.getKey(key)) === undefined) await store.put(bytes, key);
}

/** Drops files that no state of the design names any more. */
async function dropOrphans(tx: Writing, id: string): Promise<void> {
  const files = await tx.objectStore('files').getAllKeys(ofDesign(id));
  if (files.length === 0) return;
  const states = await tx.objectStore('states').getAll(ofDesign(id));
  const named = new Set(states.flatMap((state) => state.files.map(([, fileId]) => fileId)));
  const orphans = files.filter(([, fileId]) => !named.has(fileId));
  await Promise.all(orphans.map(async (key) => tx.objectStore('files').delete(key)));
}

async function dropOldStates(tx: Writing, { id, head }: KeptDesign): Promise<void> {
  const keys = await tx.objectStore('states').getAllKeys(ofDesign(id));
  const drop = statesToDrop(
    keys.map(([, at]) => at),
    head,
  );
  if (drop.length === 0) return;
  for (const store of ['states', 'texts'] as const)
    await Promise.all(drop.map(async (at) => tx.objectStore(store).delete([id, at])));
  await dropOrphans(tx, id);
}

async function dropOldDesigns(tx: Writing, present: string): Promise<void> {
  const { dropped } = sortDesigns(await tx.objectStore('designs').getAll());
  const ids = dropped.map(({ id }) => id).filter((id) => id !== present);
  for (const id of ids) {
    await tx.objectStore('designs').delete(id);
    await tx.objectStore('leases').delete(id);
    for (const store of ['states', 'texts', 'files'] as const) await tx.objectStore(store).delete(ofDesign(id));
  }
}

/**
 * Writes a state and makes it the head of its design, if no other tab holds the design; drops what is too old.
 *
 * @returns whether it was written
 */
export async function writeState(me: string, full: FullState, design: KeptDesign): Promise<boolean> {
  const tx = (await database()).transaction(STORES, 'readwrite', { durability: 'strict' });
  const lease = await tx.objectStore('leases').get(design.id);
  if (!mayWrite(lease, me)) {
    await tx.done;
    return false;
  }
  const { state, text, files } = full;
  const key: StateKey = [design.id, state.at];
  const old = await tx.objectStore('designs').get(design.id);
  const isNew = !old;
  await Promise.all([
    tx.objectStore('leases').put({ designId: design.id, holder: me, beat: Date.now() }),
    tx.objectStore('states').put(state),
    tx.objectStore('texts').put(text, key),
    ...Array.from(files, async ([fileId, bytes]) => putOnce(tx, [design.id, fileId], bytes)),
    tx.objectStore('designs').put({ ...design, declined: old?.declined ?? null }),
  ]);
  await dropOldStates(tx, design);
  if (isNew) await dropOldDesigns(tx, design.id);
  await tx.done;
  return true;
}

/** All designs, in no order. */
export async function listDesigns(): Promise<KeptDesign[]> {
  return (await database()).getAll('designs');
}

/** The states of a design, newest first. */
export async function listStates(id: string): Promise<KeptState[]> {
  return (await (await database()).getAll('states', ofDesign(id))).toReversed();
}

export interface ReadState {
  readonly design: KeptDesign;
  readonly state: KeptState;
  readonly text: string;
  /** the files that it names */
  readonly files: NamedFiles;
}

/** Reads a state, or the head of its design; null if it is not there any more. */
export async function readState(id: string, at?: number): Promise<ReadState | null> {
  const tx = (await database()).transaction(STORES, 'readonly');
  const design = await tx.objectStore('designs').get(id);
  const key: StateKey = [id, at ?? design?.head ?? 0];
  const [state, text] = [await tx.objectStore('states').get(key), await tx.objectStore('texts').get(key)];
  if (!design || !state || text === undefined) return null;
  const files = new Map<string, Bytes>();
  for (const [name, fileId] of state.files) {
    const bytes = await tx.objectStore('files').get([id, fileId]);
    if (bytes) files.set(name, bytes);
  }
  return { design, state, text, files };
}

/** The newest kept state with exactly this text, or null. */
export async function findText(text: string, sum: number): Promise<ReadState | null> {
  const states = await (await database()).getAllFromIndex('states', 'textSum', sum);
  for (const { designId, at } of states.toSorted((a, b) => b.at - a.at)) {
    const read = await readState(designId, at);
    if (read?.text === text) return read;
  }
  return null;
}

/** Notes that the user does not want a design back. */
export async function declineDesign(id: string): Promise<void> {
  const tx = (await database()).transaction('designs', 'readwrite');
  const design = await tx.store.get(id);
  if (design) await tx.store.put({ ...design, declined: design.head });
  await tx.done;
}

export async function listLeases(): Promise<Lease[]> {
  return (await database()).getAll('leases');
}

export async function readLease(designId: string): Promise<Lease | undefined> {
  return (await database()).get('leases', designId);
}

/** Takes a design if its lease is still the one that was judged. @returns whether it was taken */
export async function takeLease(designId: string, me: string, judged: Lease | undefined): Promise<boolean> {
  const tx = (await database()).transaction('leases', 'readwrite');
  const lease = await tx.store.get(designId);
  const isSame = mayWrite(lease, me) || (lease?.holder === judged?.holder && lease?.beat === judged?.beat);
  if (isSame) await tx.store.put({ designId, holder: me, beat: Date.now() });
  await tx.done;
  return isSame;
}

/** Takes a design from whoever holds it. */
export async function seizeLease(designId: string, me: string): Promise<void> {
  await (await database()).put('leases', { designId, holder: me, beat: Date.now() });
}

/** A sign of life. @returns whether the design is still held */
export async function renewLease(designId: string, me: string): Promise<boolean> {
  const tx = (await database()).transaction('leases', 'readwrite');
  const isMine = mayWrite(await tx.store.get(designId), me);
  if (isMine) await tx.store.put({ designId, holder: me, beat: Date.now() });
  await tx.done;
  return isMine;
}

/** Gives a design back in one request, which a page that is going away can still make. */
export async function abandonLease(designId: string): Promise<void> {
  await (await database()).delete('leases', designId);
}

/** Gives a design back. */
export async function dropLease(designId: string, me: string): Promise<void> {
  const tx = (await database()).transaction('leases', 'readwrite');
  const lease = await tx.store.get(designId);
  if (lease?.holder === me) await tx.store.delete(designId);
  await tx.done;
}
