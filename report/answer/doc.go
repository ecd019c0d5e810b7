// Package answer answers what is asked of a preparation: it works out the result and has it as
// a page, as data for other programs and as pictures. It reads no files, writes none and knows
// no options, so that a page in a browser may ask what the command does. For most uses, [Read]
// the bytes of a kit and a prep, [Ask] to compare, and take the [Answer] in one of [Formats].
//
// What stands on the page of an answer, and in which order, is said beside what works it out;
// the sentences come from package words.
package answer
