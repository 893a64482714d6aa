// Package model turns syntax into what the compiler knows of a pattern: names,
// the conditions under which each thing is there, pieces cut into instances with
// hands and sides, seams between edges, and steps made of resolved operations.
//
// In: the parsed files of a pattern in reading order, and its size table. Out: a
// [Pattern], and findings for every name that means nothing. It does not judge
// whether the sewing works (compiler/check does) and does not word anything for
// the sewist (compiler/wording does).
//
// Every declared thing has a presence condition: the guards that stand around
// it, and the presence of what it refers to. A seam of an optional piece is
// therefore an optional seam without anybody saying so. A condition is a set of
// garments, see compiler/condition; nothing here lists garments one by one.
package model
