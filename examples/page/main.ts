import demo from '../data/speed-ladder-demo.csv';
import { App } from './app.js';
import { messages } from './catalogue/messages.js';
import sheetStyle from './sheet.css';
import workerCode from './worker.bundle';

/** Put in by the build. */
declare const FAIRFLIGHT_VERSION: string;

document.documentElement.lang = messages.language;
document.title = messages.page.title;
new App(document.body, {
  words: messages,
  version: FAIRFLIGHT_VERSION,
  workerCode,
  sheetStyle,
  demo: { name: 'invented-shots.csv', text: demo },
});
