import { useSignal } from '@preact/signals';

/** A button that puts a text on the clipboard and says for a moment that it did. */
export function CopyButton({ text, label, children }: { text: () => string; label: string; children?: string }) {
  const done = useSignal(false);
  const copy = async () => {
    await writeClipboard(text());
    done.value = true;
    setTimeout(() => {
      done.value = false;
    }, 1600);
  };
  return (
    <button
      type="button"
      class={children ? 'quiet' : 'quiet copy'}
      aria-label={children ? undefined : label}
      title={label}
      onClick={copy}
    >
      {children && <span>{children} </span>}
      {done.value ? (
        <span role="status">copied</span>
      ) : (
        <svg viewBox="0 0 16 16" width="14" height="14" aria-hidden="true">
          <path d="M5.5 5.5h8v8h-8zM10.5 5.5v-3h-8v8h3" fill="none" stroke="currentColor" stroke-width="1.5" />
        </svg>
      )}
    </button>
  );
}

/** Plain addresses on a bench network have no clipboard interface: there, an invisible field is selected and copied. */
async function writeClipboard(text: string): Promise<void> {
  if (navigator.clipboard) return navigator.clipboard.writeText(text);
  const field = document.createElement('textarea');
  field.value = text;
  field.className = 'visually-hidden';
  document.body.append(field);
  field.select();
  document.execCommand('copy');
  field.remove();
}
