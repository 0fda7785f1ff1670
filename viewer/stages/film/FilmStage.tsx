/** The Film stage: what the mirror reflects, and what the coat does to its figure. */
import { useState } from 'react';
import { PartsForm } from '../../panels/plant/PartsForm.tsx';
import { Tabs } from '../../panels/Tabs.tsx';
import type { Part } from '../../state/selection.ts';
import { StageFrame } from '../StageFrame.tsx';
import { ExplainButton } from './explanation/ExplainButton.tsx';
import './film.css';
import { FigurePicture } from './FigurePicture.tsx';
import { FilmNumbers } from './FilmNumbers.tsx';
import { FilmRefusal } from './FilmRefusal.tsx';
import { FilmVerdict } from './FilmVerdict.tsx';
import { OwnIndices } from './OwnIndices.tsx';
import { QualityPicture } from './QualityPicture.tsx';
import { ReflectancePicture } from './ReflectancePicture.tsx';
import { useFilm } from './useFilm.ts';

const FILM: readonly Part[] = [{ kind: 'film' }];

type Picture = 'reflectance' | 'figure' | 'quality';

export function FilmStage() {
  const state = useFilm();
  const [picture, setPicture] = useState<Picture>('reflectance');
  const ready = state.kind === 'ready' ? state : null;
  return (
    <StageFrame
      sentence={<FilmVerdict state={state} />}
      aside={
        <PartsForm parts={FILM} titleId="film-form-title" title="Film">
          <OwnIndices />
        </PartsForm>
      }
      picture={
        <div className="film-pictures">
          <Tabs
            label="Picture of the film"
            chosen={picture}
            onChoose={setPicture}
            tabs={[
              {
                id: 'reflectance',
                label: 'Reflectance',
                content: () => (ready ? <ReflectancePicture {...ready} /> : <FilmRefusal state={state} hasLight />),
              },
              {
                id: 'figure',
                label: 'Figure',
                content: () => (ready ? <FigurePicture {...ready} /> : <FilmRefusal state={state} />),
              },
              {
                id: 'quality',
                label: 'Quality',
                content: () => (ready ? <QualityPicture {...ready} /> : <FilmRefusal state={state} />),
              },
            ]}
          >
            {state.kind !== 'waiting' && <ExplainButton coat={state.coat} />}
          </Tabs>
        </div>
      }
      numbers={ready && <FilmNumbers {...ready} />}
      numbersLabel="Numbers of the film"
    />
  );
}
