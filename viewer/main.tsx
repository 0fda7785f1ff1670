import './styles.css';
import './format/soundLanguage.ts';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { followResult } from './state/probeStore.ts';
import { followDesign } from './state/resultStore.ts';

followResult();
followDesign();

const root = document.getElementById('root');
if (!root) throw new Error('expected an element with the id "root" in the page; found none');
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
