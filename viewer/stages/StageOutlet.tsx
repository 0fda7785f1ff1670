/** Shows the chosen stage. Stages that were shown before stay, hidden and at rest, so that they come back as they were. */
import { Activity, lazy, Suspense, useEffect, useMemo, useRef, useState, type ComponentType } from 'react';
import { useDesign } from '../state/designStore.ts';
import { announce } from '../state/variants/announcement.ts';
import { loadedStage, loadStage } from './loadStage.ts';
import { StageBoundary, StageNotLoaded } from './StageBoundary.tsx';
import './stageOutlet.css';
import type { Stage } from './stages.ts';
import { useStage } from './stageStore.ts';

async function loaded(stage: Stage): Promise<{ default: ComponentType }> {
  try {
    return { default: await loadStage(stage) };
  } catch (cause) {
    throw new StageNotLoaded(cause instanceof Error ? cause.message : String(cause), { cause });
  }
}

/** The heading, where the focus goes when the user chooses the stage. */
function StageHeading({ stage: { key, title, question } }: { readonly stage: Stage }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const name = useDesign((state) => state.current.file.name);
  // runs each time the stage is shown, not only the first time
  useEffect(() => {
    if (useStage.getState().changes === 0) return;
    heading.current?.focus({ preventScroll: true });
    announce(`Stage ${title}.`);
  }, [title]);
  return (
    <>
      <p className="print-only">{name}, as Evenfall predicts it</p>
      <h2 id={`stage-${key}`} ref={heading} tabIndex={-1} className="stage-heading">
        {title}: {question}
      </h2>
    </>
  );
}

function StagePlace({ stage }: { readonly stage: Stage }) {
  const [attempt, setAttempt] = useState(0);
  // a lazy component remembers its failure: each attempt needs one of its own
  const Content = useMemo(() => loadedStage(stage) ?? lazy(async () => loaded(stage)), [stage, attempt]);
  return (
    <section className="stage" aria-labelledby={`stage-${stage.key}`} data-stage={stage.key}>
      <StageHeading stage={stage} />
      <StageBoundary key={attempt} title={stage.title} onRetry={() => setAttempt(attempt + 1)}>
        <Suspense
          fallback={
            <p className="stage-loading" role="status">
              Loading the stage {stage.title} …
            </p>
          }
        >
          <Content />
        </Suspense>
      </StageBoundary>
    </section>
  );
}

export function StageOutlet({ stages }: { readonly stages: readonly Stage[] }) {
  const shown = useStage(({ key }) => key);
  const [seen, setSeen] = useState<readonly string[]>([shown]);
  if (!seen.includes(shown)) setSeen([...seen, shown]);
  return stages
    .filter(({ key }) => seen.includes(key))
    .map((stage) => (
      <Activity key={stage.key} mode={stage.key === shown ? 'visible' : 'hidden'}>
        <StagePlace stage={stage} />
      </Activity>
    ));
}
