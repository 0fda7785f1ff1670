/** The trainer's sheet: worked out for the chosen tank, looked at, saved, printed. */
import { FileDown, Printer } from 'lucide-react';
import { useEffect, useState } from 'react';
import { textFile } from '../../export/fileKinds.ts';
import { exportName, saveFile } from '../../export/saveFile.ts';
import { Dialog } from '../../panels/plant/Dialog.tsx';
import { useUnits } from '../../state/units.ts';
import { announce } from '../../state/variants/announcement.ts';
import { printSheet } from '../film/explanation/printSheet.ts';
import { Sheet } from '../film/explanation/Sheet.tsx';
import { lessons } from './lessons/all.ts';
import { sayIn } from './say.ts';
import { trainerSheet, type SheetPart } from './trainerSheet.ts';
import { useBench } from './useBench.ts';
import { prepareLesson } from './usePrepared.ts';

const today = (): string => new Date().toLocaleDateString(undefined, { dateStyle: 'long' });

function Actions({ html, tankName }: { readonly html: string; readonly tankName: string }) {
  const save = async (): Promise<void> => {
    const content = Promise.resolve(textFile(html, 'html'));
    const saved = await saveFile(content, exportName(tankName, 'lessons', 'html'), 'html');
    if (saved !== null) announce(`Saved as ${saved}.`);
  };
  return (
    <div className="explanation-actions">
      <button type="button" onClick={() => void save()}>
        <FileDown aria-hidden="true" size={16} /> Save as a page
      </button>
      <button type="button" onClick={() => printSheet(html)}>
        <Printer aria-hidden="true" size={16} /> Print
      </button>
    </div>
  );
}

export function TrainerDialog({ onClose }: { readonly onClose: () => void }) {
  const bench = useBench();
  const say = sayIn(useUnits());
  const [parts, setParts] = useState<readonly SheetPart[]>([]);
  useEffect(() => {
    let isWanted = true;
    const made: SheetPart[] = [];
    const make = async (): Promise<void> => {
      for (const lesson of lessons) {
        try {
          made.push({
            lesson,
            prepared: await prepareLesson(
              lesson,
              bench,
              () => isWanted,
              () => {},
            ),
          });
        } catch (error) {
          if (!isWanted) return;
          made.push({ lesson, refusal: error instanceof Error ? error.message : String(error) });
        }
        if (isWanted) setParts([...made]);
      }
    };
    setParts([]);
    void make();
    return () => {
      isWanted = false;
    };
  }, [bench]);
  const { name } = bench.plant;
  const html = parts.length === lessons.length ? trainerSheet(parts, name, today(), say) : null;
  return (
    <Dialog title="Trainer’s sheet" onClose={onClose}>
      {html === null ? (
        <p role="status">
          Working out your tank: lesson {parts.length + 1} of {lessons.length} …{' '}
          <progress value={parts.length} max={lessons.length} aria-label="Working out your tank" />
        </p>
      ) : (
        <>
          <Actions html={html} tankName={name} />
          <Sheet html={html} label="Trainer’s sheet" />
        </>
      )}
    </Dialog>
  );
}
