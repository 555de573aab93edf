import { signal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

/** Whether the drawer is open; its content is fetched the first time. */
const open = signal(false);
const Content = signal<ComponentType | null>(null);

/** The button that opens the calculators, and their drawer. Stands in the head of the page, so that it can be reached from every screen. */
export function CalculatorsDrawer() {
  const drawer = useRef<HTMLDialogElement>(null);
  const isOpen = open.value;
  useEffect(() => {
    const dialog = drawer.current!;
    if (isOpen && !dialog.open) dialog.showModal();
    if (!isOpen && dialog.open) dialog.close();
  }, [isOpen]);
  const Inside = Content.value;
  return (
    <>
      <button
        type="button"
        class="open-calculators"
        aria-haspopup="dialog"
        onClick={() => {
          open.value = true;
          void load();
        }}
      >
        Calculators
      </button>
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: the click is a shortcut for the pointer; Escape and the button close for the keyboard */}
      <dialog
        ref={drawer}
        class="drawer"
        aria-labelledby="drawer-title"
        onClose={() => {
          open.value = false;
        }}
        onClick={(event) => {
          // Outside of the drawer's own paper is its backdrop.
          if (event.target === drawer.current) open.value = false;
        }}
      >
        <div class="drawer-paper">
          <div class="drawer-head">
            <h2 id="drawer-title">Calculators</h2>
            <button
              type="button"
              class="quiet"
              onClick={() => {
                open.value = false;
              }}
            >
              Close
            </button>
          </div>
          {isOpen && (Inside ? <Inside /> : <p class="about">Fetching the formulas …</p>)}
        </div>
      </dialog>
    </>
  );
}

async function load(): Promise<void> {
  if (Content.peek()) return;
  const { Calculators } = await import('./calculators.tsx');
  Content.value = Calculators;
}
