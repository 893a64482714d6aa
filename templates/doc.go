// Package templates holds what a designer may want to change without Go: the
// page templates, the style sheets and the tables of phrases.
//
// In: nothing. Out: the files as they stand, embedded in the program. It knows
// neither how they are filled nor with what; that is the renderers' part.
package templates
