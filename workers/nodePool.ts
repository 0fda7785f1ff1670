/** The pool of the command line, of scripts and of tests. */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { wrap } from 'comlink';
import nodeEndpoint from 'comlink/dist/esm/node-adapter.mjs';
import { createPool, type ComputeWorker, type WorkerPool } from './pool.ts';
import { isProgress, type ComputeApi } from './protocol.ts';

const MAX_WORKERS = 8;

/** Starts one compute thread. */
export function spawnNodeWorker(): ComputeWorker {
  const thread = new Worker(new URL('./nodeWorkerEntry.mjs', import.meta.url), { execArgv: [] });
  thread.unref();
  const died = new Promise<never>((_, reject) => {
    const fail = (reason: string): void =>
      reject(new Error(`A calculation worker stopped (${reason}); a new one has taken its place.`));
    thread.on('error', (error) => fail(error instanceof Error ? error.message : String(error)));
    thread.on('exit', (code) => fail(`exit code ${code}`));
  });
  died.catch(() => {});
  const worker: ComputeWorker = {
    api: wrap<ComputeApi>(nodeEndpoint(thread)) as unknown as ComputeApi,
    onProgress: () => {},
    died,
    terminate: () => void thread.terminate(),
  };
  thread.on('message', (message) => {
    if (isProgress(message)) worker.onProgress(message);
  });
  return worker;
}

/** Starts as many threads as the machine has cores, 8 at most. */
export function createNodePool(size = Math.min(MAX_WORKERS, availableParallelism())): WorkerPool {
  return createPool(spawnNodeWorker, size);
}
