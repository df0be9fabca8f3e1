/** Names of the demo folders. @public see `recompute.mjs` */
export declare const DEMOS: readonly string[];
/** Text of a demo's build.json. @public see `recompute.mjs` */
export declare function textOf(demo: string): string;
/** Reserves by finding id. @public see `recompute.mjs` */
export declare function reserves(demo: string): Readonly<Record<string, number>>;
/** Room beside chains by address, metres. @public see `recompute.mjs` */
export declare function sweptRooms(demo: string): Readonly<Record<string, number>>;
