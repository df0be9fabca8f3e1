/** The nine steps of the job, in the order of the sheets. Any of them can be opened at any time. */
export declare const STEPS: readonly [{
    readonly id: "brief";
    readonly number: 1;
    readonly name: "Brief";
}, {
    readonly id: "ratios";
    readonly number: 2;
    readonly name: "Ratios";
}, {
    readonly id: "layout";
    readonly number: 3;
    readonly name: "Layout";
}, {
    readonly id: "strength";
    readonly number: 4;
    readonly name: "Strength";
}, {
    readonly id: "subframe";
    readonly number: 5;
    readonly name: "Subframe";
}, {
    readonly id: "make";
    readonly number: 6;
    readonly name: "Make";
}, {
    readonly id: "true";
    readonly number: 7;
    readonly name: "True";
}, {
    readonly id: "fit-up";
    readonly number: 8;
    readonly name: "Fit-up";
}, {
    readonly id: "book";
    readonly number: 9;
    readonly name: "Book";
}];
export type Step = (typeof STEPS)[number];
export type StepId = Step['id'];
/** The step that the page opens on when its address names none: what breaks first. */
export declare const FIRST_STEP: StepId;
/** The step of an id; null when there is none such. */
export declare function stepOf(id: string): Step | null;
