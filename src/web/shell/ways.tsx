/** What would do where something is short: each is a line of its own, to be weighed against the others. */
export const Ways = ({ ways }: { ways: readonly string[] }) => (
  <ul className="ways">
    {ways.map((way) => (
      <li key={way}>{way}</li>
    ))}
  </ul>
);
