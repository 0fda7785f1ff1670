/** schema: prints the JSON Schema of the design file, for editors that check and complete. */
import { designJsonSchema } from '../../engine/index.ts';

process.stdout.write(`${JSON.stringify(designJsonSchema(), null, 2)}\n`);
