import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { precachePlugin } from './offline/precachePlugin.ts';

/** The development server puts scripts and styles into the page itself, which the page's policy forbids. */
const withoutPolicyWhileServing: Plugin = {
  name: 'without-policy-while-serving',
  apply: 'serve',
  transformIndexHtml: (html, { server }) =>
    server ? html.replace(/<meta\s+http-equiv="Content-Security-Policy"[^>]*>/, '') : html,
};

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  base: './',
  plugins: [react(), withoutPolicyWhileServing, precachePlugin()],
  worker: { format: 'es' },
  build: { outDir: '../dist', emptyOutDir: true, target: 'es2022' },
});
