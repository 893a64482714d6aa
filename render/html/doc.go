// Package html sets a booklet as one HTML page.
//
// In: a [booklet.Booklet], worded to the last character. Out: the bytes of a
// single HTML5 file that needs no network, no script and no other file; the same
// booklet gives the same bytes. It does not know the garment: what is said, in
// which order and for whom has been decided before.
//
// A booklet that contradicts itself (an id used twice, a link to nowhere, a row
// with too many cells) or that holds a kind of block unknown here is refused with
// an error. Nothing is left out silently.
//
// The page is built from the inside out: each block is filled into its template
// once its own content is finished text, so templates only place values and
// never fail half way. The markup stands in templates/html; the few inline
// elements and the drawings are written here, where no white space may creep in.
package html
