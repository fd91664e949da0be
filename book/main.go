// Book lists the chapters of the book, shows one, works an example again with
// other inputs, and weaves the committed files of the chapters.
//
//	go run ./book
//	go run ./book show voltagedrop
//	go run ./book -h
package main

import "os"

func main() {
	os.Exit(run(chapters(), os.Args[1:], os.Stdout, os.Stderr))
}
