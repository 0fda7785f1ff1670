/** Where the aluminium ends. */
import { estimate_mg, estimate_percent, fixed } from '../format/numbers.ts';
import { useResult } from '../state/resultStore.ts';

export function MassBudget() {
  const coat = useResult((state) => state.coat);
  if (!coat) return null;
  const { evaporated, items, closure } = coat.budget;
  const shareOf = (mass: number): string => (evaporated > 0 ? `${fixed((100 * mass) / evaporated, 2)} %` : '–');
  const closed = estimate_percent({ value: 1 + closure.value, error: closure.error });
  return (
    <section className="panel" aria-label="Mass budget of the shot">
      <table className="numbers">
        <caption>
          Mass budget <small>{estimate_mg({ value: evaporated, error: 0 }).value} mg evaporated</small>
        </caption>
        <thead>
          <tr>
            <th scope="col">Ends on</th>
            <th scope="col">mg</th>
            <th scope="col">error</th>
            <th scope="col">share</th>
          </tr>
        </thead>
        <tbody>
          {items.map(({ name, mass }) => {
            const text = estimate_mg(mass);
            return (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td className="value">{text.value}</td>
                <td className="error">{mass.error > 0 ? `± ${text.error}` : ''}</td>
                <td>{shareOf(mass.value)}</td>
              </tr>
            );
          })}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">Sum</th>
            <td className="value" colSpan={3}>
              {closed.value} % ± {closed.error} % of the mass evaporated
            </td>
          </tr>
        </tfoot>
      </table>
      <p className="quiet">
        The mirror’s share comes from quadrature, the others from rays, so the sum is a check. Errors of rays are four
        standard errors.
      </p>
    </section>
  );
}
