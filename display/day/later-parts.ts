// What nobody sees before something is touched: the page loads it as soon as it shows the day (`parts/later.ts`).
import './station-list.ts';
import './try-panel.ts';
