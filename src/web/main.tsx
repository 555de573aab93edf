import './no-eval.ts';
import { render } from 'preact';
import { App } from './app.tsx';
import { followPlans } from './plans.ts';
import { followStudy } from './study-source.ts';
import { applyTheme } from './theme.tsx';

applyTheme();
followStudy();
followPlans();
render(<App />, document.body);
