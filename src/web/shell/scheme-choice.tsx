import { useMantineColorScheme, type MantineColorScheme } from '@mantine/core';

const CHOICES: readonly { id: MantineColorScheme; name: string }[] = [
  { id: 'auto', name: 'as on this device' },
  { id: 'light', name: 'light' },
  { id: 'dark', name: 'dark' },
];

/** Light or dark, kept in this browser. */
export function SchemeChoice() {
  const { colorScheme, setColorScheme } = useMantineColorScheme();
  return (
    <label className="shell-scheme">
      Colors
      <select
        value={colorScheme}
        onChange={(event) => setColorScheme(event.currentTarget.value as MantineColorScheme)}
      >
        {CHOICES.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
