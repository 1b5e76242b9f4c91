import { useLocation } from 'wouter';
import { IconButton } from '../ui/index.ts';

interface Entries {
  canGoBack: boolean;
  canGoForward: boolean;
}

/** Whether there is somewhere to go; where the window does not say, the buttons are simply there. */
function entries(): Entries {
  const known = (window as { navigation?: Entries }).navigation;
  return { canGoBack: known?.canGoBack ?? true, canGoForward: known?.canGoForward ?? true };
}

/** Back and forward through the places visited, for a window without a bar of its own. */
export function HistoryButtons() {
  // Asked again with every move.
  useLocation();
  const { canGoBack, canGoForward } = entries();
  return (
    <div className="history-buttons">
      <IconButton
        sign="previous"
        label="Back"
        labelHidden
        disabled={!canGoBack}
        onClick={() => history.back()}
      />
      <IconButton
        sign="next"
        label="Forward"
        labelHidden
        disabled={!canGoForward}
        onClick={() => history.forward()}
      />
    </div>
  );
}
