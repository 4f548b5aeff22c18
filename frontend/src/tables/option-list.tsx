/** What a select may choose, each by its value and in words; first what stands for nothing. */
export function OptionList({
  none,
  options,
}: {
  none?: string;
  options: readonly (readonly [value: string, word: string])[];
}) {
  return (
    <>
      {none !== undefined && <option value="">{none}</option>}
      {options.map(([value, word]) => (
        <option key={value} value={value}>
          {word}
        </option>
      ))}
    </>
  );
}
