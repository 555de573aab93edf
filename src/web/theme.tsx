import { signal } from '@preact/signals';

const THEMES = ['system', 'light', 'dark'] as const;
type Theme = (typeof THEMES)[number];

const KEY = 'uprate-theme';
const theme = signal<Theme>(THEMES.find((name) => name === localStorage.getItem(KEY)) ?? 'system');

/** Puts the kept choice on the page. */
export function applyTheme(): void {
  if (theme.value === 'system') delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = theme.value;
}

export function ThemeChoice() {
  return (
    <label class="theme">
      <span>Paper </span>
      <select
        value={theme.value}
        onChange={(event) => {
          theme.value = event.currentTarget.value as Theme;
          localStorage.setItem(KEY, theme.value);
          applyTheme();
        }}
      >
        {THEMES.map((name) => (
          <option key={name} value={name}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
