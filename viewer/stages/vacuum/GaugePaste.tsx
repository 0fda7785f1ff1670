/** Where gauge readings are pasted; what is wrong with their order stands below what is wrong with single cells. */
import { TriangleAlert } from 'lucide-react';
import { PasteTable } from '../../panels/PasteTable.tsx';
import { GAUGE_COLUMNS, type GaugeReadings } from './gaugeReadings.ts';

interface GaugePasteProps {
  readonly label: string;
  readonly example: string;
  readonly text: string;
  readonly onText: (text: string) => void;
  readonly read: GaugeReadings;
}

/** Faults told; more are counted. */
const MOST = 6;

export function GaugePaste({ label, example, text, onText, read: { orderFaults } }: GaugePasteProps) {
  return (
    <section className="panel" aria-label={label}>
      <PasteTable label={label} columns={GAUGE_COLUMNS} example={example} text={text} onText={onText} />
      <div className="paste-faults" aria-live="polite">
        {orderFaults.length > 0 && (
          <>
            <p className="paste-count">
              <TriangleAlert aria-hidden="true" size={16} /> Not drawn until this is right
            </p>
            <ul>
              {orderFaults.slice(0, MOST).map(({ row, column, message }) => (
                <li key={`${row} ${column}`}>
                  Row {row}, column {column}: {message}
                </li>
              ))}
              {orderFaults.length > MOST && <li>… and {orderFaults.length - MOST} more</li>}
            </ul>
          </>
        )}
      </div>
    </section>
  );
}
