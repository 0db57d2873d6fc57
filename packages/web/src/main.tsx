import './styles/paper.css';
import './styles/frame.css';
import './styles/drawing.css';
import './styles/forms.css';
import './styles/notes.css';
import './styles/schedules.css';
import './styles/shelf.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.js';
import { begin } from './state/store.js';

createRoot(document.getElementById('sheet')!).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
void begin();
