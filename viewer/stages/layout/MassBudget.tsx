/** Where the aluminium ends. */
import { estimateText, fixed, type EstimateText } from '../../format/numbers.ts';
import type { Estimate } from '../../../engine/index.ts';
import { useResult } from '../../state/resultStore.ts';

const ONE_GRAM = 1e-3;
const GRAM_DECIMALS = 4;

export function MassBudget() {
  const coat = useResult((state) => state.coat);
  if (!coat) return null;
  const { evaporated, items, closure } = coat.budget;
  const shareOf = (mass: number): string => (evaporated > 0 ? `${fixed((100 * mass) / evaporated, 2)} %` : '–');
  const isHeavy = evaporated >= ONE_GRAM;
  const unit = isHeavy ? 'g' : 'mg';
  const text = (mass: Estimate): EstimateText =>
    isHeavy ? estimateText(mass, 1e3, GRAM_DECIMALS) : estimateText(mass, 1e6);
  const sum = closure && { value: evaporated * (1 + closure.value), error: evaporated * closure.error };
  return (
    <section className="panel" aria-label="Mass budget of the shot">
      <table className="numbers">
        <caption>
          Mass budget{' '}
          <small>
            {text({ value: evaporated, error: 0 }).value} {unit} evaporated
          </small>
        </caption>
        <thead>
          <tr>
            <th scope="col">Ends on</th>
            <th scope="col">{unit}</th>
            <th scope="col">error</th>
            <th scope="col">share</th>
          </tr>
        </thead>
        <tbody>
          {items.map(({ name, mass }, i) => (
            <tr key={`${i} ${name}`}>
              <th scope="row">{name}</th>
              <td className="value">{text(mass).value}</td>
              <td className="error">{mass.error > 0 ? text(mass).error : ''}</td>
              <td>{shareOf(mass.value)}</td>
            </tr>
          ))}
        </tbody>
        {sum && (
          <tfoot>
            <tr>
              <th scope="row">Sum</th>
              <td className="value">{text(sum).value}</td>
              <td className="error">{text(sum).error}</td>
              <td>{shareOf(sum.value)}</td>
            </tr>
          </tfoot>
        )}
      </table>
      <p className="quiet">
        {sum
          ? 'The mirror’s share comes from quadrature, the others from rays, so the sum is a check. Errors of rays are four standard errors.'
          : 'The mirror’s share comes from quadrature; where the rest ends follows when you let go.'}
      </p>
    </section>
  );
}
