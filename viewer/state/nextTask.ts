/** Ends the task at hand, so that the page can paint and take input before what follows. */
export const nextTask = async (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
