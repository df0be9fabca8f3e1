/** The nine steps of the job, in the order of the sheets. Any of them can be opened at any time. */
export const STEPS = [
    { id: 'brief', number: 1, name: 'Brief' },
    { id: 'ratios', number: 2, name: 'Ratios' },
    { id: 'layout', number: 3, name: 'Layout' },
    { id: 'strength', number: 4, name: 'Strength' },
    { id: 'subframe', number: 5, name: 'Subframe' },
    { id: 'make', number: 6, name: 'Make' },
    { id: 'true', number: 7, name: 'True' },
    { id: 'fit-up', number: 8, name: 'Fit-up' },
    { id: 'book', number: 9, name: 'Book' },
];
/** The step that the page opens on when its address names none: what breaks first. */
export const FIRST_STEP = 'strength';
/** The step of an id; null when there is none such. */
export function stepOf(id) {
    return STEPS.find((step) => step.id === id) ?? null;
}
