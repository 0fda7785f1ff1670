/** Opening and making links that carry a whole design. */
import { keptText } from '../../format/designText.ts';
import { openPlant } from '../../../engine/index.ts';
import { useDesign, type Snapshot } from '../designStore.ts';
import { adopt } from '../editDesign.ts';
import { dismissRefusal, refuse } from '../refusal.ts';
import type { Unpacked } from './designLink.ts';
import { embedFiles } from './embedFiles.ts';
import { newDesign, setTrace } from './lineage.ts';
import { carriesDesign } from './linkKey.ts';
import { freshTime } from './records.ts';

const TITLE = 'The link cannot be opened';

/** What packs and unpacks designs; only links need it, so it comes when one is opened or made. */
export const loadPacking = async () => import('./designLink.ts');

/** Takes the design out of the address, so that loading the page again brings back the edits instead. */
function clearFragment(): void {
  window.history.replaceState(window.history.state, '', window.location.pathname + window.location.search);
}

/** The design in the address, unpacked. */
async function unpackedLink(fragment: string): Promise<Unpacked> {
  try {
    return (await loadPacking()).unpackFragment(fragment);
  } catch {
    return { ok: false, message: 'the part of the page that reads links did not come; load the page again' };
  }
}

/** Opens the design in the address, if there is one; answers whether it did. */
export async function openLink(): Promise<boolean> {
  const fragment = window.location.hash;
  if (!carriesDesign(fragment)) return false;
  const unpacked = await unpackedLink(fragment);
  if (window.location.hash !== fragment) return false; // another link has taken its place meanwhile
  if (!unpacked.ok) {
    refuse(TITLE, [{ path: '', message: unpacked.message }]);
    return false;
  }
  const opened = openPlant(unpacked.text);
  if (!opened.ok) {
    refuse(TITLE, opened.problems);
    return false;
  }
  dismissRefusal();
  const snapshot: Snapshot = { file: opened.file, files: new Map(), plant: opened.plant, presetId: null };
  // a link is no file: the design counts as unsaved until it lies in one
  setTrace(snapshot, { design: newDesign(), at: freshTime(), label: 'open a link', value: null, isStored: false });
  adopt(snapshot, 'open a link');
  clearFragment();
  return true;
}

export interface CopiedLink {
  readonly link: string;
  readonly remark: string;
  readonly isLong: boolean;
  /** whether it lies in the clipboard */
  readonly isCopied: boolean;
  /** whether browsers open it */
  readonly fits: boolean;
}

async function copyText(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false; // no permission, or no secure page
  }
}

/** Makes a link to the design on the page and copies it. */
export async function copyLink(): Promise<CopiedLink> {
  const { file, files } = useDesign.getState().current;
  const { origin, protocol, pathname } = window.location;
  const base = (protocol === 'file:' ? 'file://' : origin) + pathname;
  const { packFragment, linkRemark } = await loadPacking();
  const link = base + packFragment(keptText(embedFiles(file, files)));
  const { text, isLong, fits } = linkRemark(link.length);
  return { link, remark: text, isLong, fits, isCopied: fits && (await copyText(link)) };
}
