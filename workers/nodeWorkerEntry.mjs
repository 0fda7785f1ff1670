// Lets a worker thread read TypeScript, whoever started it.
import { register } from 'tsx/esm/api';

register();
await import('./nodeWorker.ts');
