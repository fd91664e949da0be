// Package unitstest holds what the tests of every package share: comparing
// floats ([Near]), recorded files ([Golden]), checks against published values
// ([Published]) and of shown working ([CheckSheet]).
//
// It is for _test.go files only; a test in its folder house holds that no
// other file imports it. Each helper takes a [testing.TB], so that its own
// failures can be tested. Environment: DRAWBAR_UPDATE=1 makes [Golden]
// rewrite. A flag would not do, since go test ./... with one fails in every
// package that does not know it.
package unitstest
