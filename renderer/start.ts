import './tokens.css';
import './styles/fonts.css';
import './styles/base.css';
import './styles/frame.css';
import './styles/table.css';
import './styles/parts.css';
import './parts/add-form.css';
import './styles/columns.css';
import './styles/pictures.css';
import './styles/print.css';
import { engine } from './engine/engine';

// The engine loads and reads the library while the window itself is loaded and draws itself.
engine();
void import('./main');
