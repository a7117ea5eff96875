import { say } from '../say.ts';
import './line.css';
import { useSignal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import { Dialog } from '../parts/dialog.tsx';

/**
 * What is one tap away from every page beside the four verbs: who still owes, and the line to write
 * a record in. The key / opens the line; its reader comes only then.
 */
export function Shortcuts() {
  const isOpen = useSignal(false);
  useLineKey(() => {
    isOpen.value = true;
  });
  return (
    <>
      <nav class="shortcuts no-print" aria-label={say`Shortcuts`}>
        <a href="/families?show=to-pay">{say`Still to pay`}</a>
        <button
          type="button"
          aria-haspopup="dialog"
          aria-keyshortcuts="/"
          onClick={() => {
            isOpen.value = true;
          }}
        >
          {say`One line`}{' '}
          <span class="key" aria-hidden="true">
            /
          </span>
        </button>
      </nav>
      <Dialog
        open={isOpen.value}
        title={say`Write it in one line`}
        close={say`Close`}
        onClose={() => {
          isOpen.value = false;
        }}
      >
        <LazyBox />
      </Dialog>
    </>
  );
}

function useLineKey(open: () => void): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!isLineKey(event) || document.querySelector('dialog[open]') !== null) return;
      event.preventDefault();
      open();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, []);
}

/** `/` alone, and not where somebody is writing. */
function isLineKey(event: KeyboardEvent): boolean {
  if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey) return false;
  const at = event.target;
  if (!(at instanceof HTMLElement)) return true;
  return !at.isContentEditable && at.closest('input, textarea, select') === null;
}

/** The box with its reader, in a chunk of its own. */
function LazyBox() {
  const box = useSignal<{ readonly Box: ComponentType } | undefined>(undefined);
  useEffect(() => {
    void import('./line-box.tsx').then(({ LineBox }) => {
      box.value = { Box: LineBox };
    });
  }, [box]);
  const loaded = box.value;
  return loaded === undefined ? null : <loaded.Box />;
}
