/** Stations to px, the same for everything on the sheet. */
export interface Along {
  readonly left: number;
  readonly right: number;
  readonly letter: number;
  /** Px for a metre. */
  readonly scale: number;
  readonly x: (station: number) => number;
}
