// Package pdf sets a booklet on paper.
//
// In: a [booklet.Booklet], whose every text is final, and the paper. Out: the
// bytes of a PDF file, the same bytes for the same booklet and date, its number
// of pages, and the characters for which no font had a shape. It knows nothing
// of garments, and it reads and writes no files.
//
// The work goes in three steps, each in files of its own. Layout (setter, words,
// lines, blocks, table, step, figure, cover, contents) turns blocks into a flow of
// pieces, each a height and the marks in it. Paging (pager, finishing) cuts the
// flow into pages. Drawing (draw, canvas, writer) puts the marks of a page on a
// canvas; only writer knows which package writes the PDF file.
//
// All lengths are points (1/72 inch), x to the right, y down from the top of the
// page. The clauses of ISO 32000-1 and of Unicode's annexes that comments name are
// cited from memory.
package pdf
