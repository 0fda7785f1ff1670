/** What the model of the residual gas assumes, with formula and source. */
import { GAS_ASSUMPTIONS } from '../../../engine/gas/assumptions.ts';

export function GasAssumptions() {
  return (
    <details className="panel vacuum-assumptions">
      <summary>What the gas’s numbers assume</summary>
      <ul>
        {GAS_ASSUMPTIONS.map(({ statement, formula, source }) => (
          <li key={statement}>
            {statement} {formula !== '' && <code>{formula}</code>} <small>{source}</small>
          </li>
        ))}
      </ul>
    </details>
  );
}
