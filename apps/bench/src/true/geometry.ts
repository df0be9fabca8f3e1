/** Place on a clock face: angle clockwise from twelve, y downwards as a screen has it. */
export function polar(radius: number, angle: number): { readonly x: number; readonly y: number } {
  return { x: radius * Math.sin(angle), y: -radius * Math.cos(angle) };
}

/** The next of 1, 2, 5, 10, … that is not below a value. */
export function niceStep(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const step = [1, 2, 5, 10].find((one) => one * power >= value * 0.999) ?? 10;
  return Number((step * power).toPrecision(3));
}

/** Arc on a clock face from one angle to another, clockwise. */
export function arc(radius: number, from: number, to: number): string {
  const [a, b] = [polar(radius, from), polar(radius, to)];
  return `M${a.x} ${a.y}A${radius} ${radius} 0 ${to - from > Math.PI ? 1 : 0} 1 ${b.x} ${b.y}`;
}
