import './styles/paper.css';
import './styles/frame.css';
import './styles/drawing.css';
import './styles/drawing-tools.css';
import './styles/arrange.css';
import './styles/forms.css';
import './styles/notes.css';
import './styles/overlay.css';
import './styles/commands.css';
import './styles/sheets.css';
import './styles/projects.css';
import './styles/fitting.css';
import './styles/changes.css';
import './styles/schedules.css';
import './styles/shelf.css';
import './styles/shelf-versions.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app.js';
import { start } from './projects/navigation.js';

createRoot(document.getElementById('sheet')!).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
void start();
