/** The chart library, loaded after the language that it asks for has been made sound. */
import '../format/soundLanguage.ts';
import uPlot from 'uplot';

export { uPlot };
