// The page's beginning: settings, the demo or the last project, the store, the first sheet.

import './styles/index.css';
import { createRoot } from 'react-dom/client';
import { start } from './start.ts';
import { ReachProvider } from './ui/app-context.tsx';
import { AppFrame } from './ui/app-frame.tsx';
import { english, WordsProvider } from './words/words.ts';

const container = document.getElementById('app');
if (!container) throw new Error('index.html has no element for the app');
const reach = start(english);
createRoot(container).render(
  <WordsProvider value={english}>
    <ReachProvider reach={reach}>
      <AppFrame />
    </ReachProvider>
  </WordsProvider>,
);
