import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './tokens.css';
import './styles/fonts.css';
import './styles/base.css';
import './styles/frame.css';
import './styles/table.css';
import './styles/parts.css';
import './styles/pictures.css';
import { App } from './app';

const root = document.getElementById('root');
if (root !== null) {
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
}
