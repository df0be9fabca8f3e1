/** Clock angles on a part: "6:30" is the place of a clock's hour hand, seen from the stated end. */

const CLOCK = /^(1[0-2]|[1-9]):([0-5]\d)$/;

/** Angle of a clock text in rad, clockwise from twelve; undefined when it is none. */
export function clockAngle(text: string): number | undefined {
  const match = CLOCK.exec(text.trim());
  if (!match) return undefined;
  return (((Number(match[1]) % 12) + Number(match[2]) / 60) / 12) * 2 * Math.PI;
}

/** Clock text of an angle in rad, to the nearest quarter hour. */
export function clockText(angle: number): string {
  const quarters = ((Math.round((angle / (2 * Math.PI)) * 48) % 48) + 48) % 48;
  const hour = Math.floor(quarters / 4);
  return `${hour === 0 ? 12 : hour}:${String((quarters % 4) * 15).padStart(2, '0')}`;
}
