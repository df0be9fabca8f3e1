/** See `browser.mjs`. */
export declare function findBrowser(only?: 'named' | 'system' | 'packaged'): Promise<{
  readonly executablePath: string;
  readonly env: NodeJS.ProcessEnv;
  readonly args: string[];
}>;
