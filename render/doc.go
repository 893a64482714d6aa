// Package render holds the two renderers, html and pdf, each in a folder of its
// own, and the test that they set the same booklet.
//
// In: a booklet.Booklet. Out: a file's bytes. They decide nothing about the
// garment.
package render
