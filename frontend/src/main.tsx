import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import '@vaadin/aura/aura.css';
import './shared/theme.css';
import { App } from './app/app';

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no #root');
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
