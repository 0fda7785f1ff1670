/** Entry of a compute worker thread in Node. */
import { parentPort } from 'node:worker_threads';
import { expose } from 'comlink';
import nodeEndpoint from 'comlink/dist/esm/node-adapter.mjs';
import { createComputeHost } from './computeHost.ts';
import { STORE_BYTES_PER_WORKER } from './storeSize.ts';

if (!parentPort) throw new Error('this file is the entry of a worker thread');
const port = parentPort;

expose(
  createComputeHost(
    {
      post: (message) => port.postMessage(message),
      breathe: async () => new Promise((resolve) => void setImmediate(resolve)),
    },
    STORE_BYTES_PER_WORKER,
  ),
  nodeEndpoint(port),
);
