/** The stage in the page's address: `?stage=vacuum`. The first stage needs no mention; a design in the fragment stays. */
import type { Stage } from './stages.ts';

const PARAMETER = 'stage';

/** The stage that an address names; null if it names none, or one that there is not. */
export function stageInAddress(stages: readonly Stage[], search: string): string | null {
  const named = new URLSearchParams(search).get(PARAMETER);
  return stages.find(({ key }) => key === named)?.key ?? null;
}

/**
 * The query of the address at which a stage is shown; whatever else it says stays as it is written.
 *
 * @param search the query at hand, with its question mark, or empty
 */
export function searchOf(stages: readonly Stage[], key: string, search: string): string {
  const others = search
    .replace(/^\?/, '')
    .split('&')
    .filter((pair) => pair !== '' && pair.split('=')[0] !== PARAMETER);
  const pairs = key === stages[0]?.key ? others : [...others, `${PARAMETER}=${encodeURIComponent(key)}`];
  return pairs.length === 0 ? '' : `?${pairs.join('&')}`;
}
