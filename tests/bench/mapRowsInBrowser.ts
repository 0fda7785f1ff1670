/** The same with the pool of a page. */
import { createBrowserPool } from '../../workers/browserPool.ts';
import { mapRows } from './mapRows.ts';
import type { Row } from './row.ts';

export const mapRowsInBrowser = async (): Promise<Row[]> => mapRows(createBrowserPool);
