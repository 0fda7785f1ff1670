/** Makes the one-page explanation of the coat on the page, with the pinned variants as its options. */
import { explainCoat } from '../../../../engine/explain/explainCoat.ts';
import type { Coat } from '../../../../engine/index.ts';
import { explainPage, facingOf } from '../../../../workers/report/explainPage.ts';
import { useDesign } from '../../../state/designStore.ts';
import { useVariants } from '../../../state/variants/variantStore.ts';

export interface ExplanationPage {
  readonly question: string;
  readonly html: string;
}

/** @param date as the reader writes it */
export async function makePage(coat: Coat, date: string): Promise<ExplanationPage> {
  const options = useVariants
    .getState()
    .variants.flatMap(({ name, coat: other }) => (other && other !== coat ? [{ name, coat: other }] : []));
  const explanation = await explainCoat(coat, { options });
  const facing = facingOf(useDesign.getState().current.file);
  return { question: explanation.question, html: explainPage(explanation, { facing, dateLine: date }) };
}
