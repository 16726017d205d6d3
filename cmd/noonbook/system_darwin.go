package main

import "os/exec"

// opener opens what it is given with the program that the system has for it.
func opener(what string) *exec.Cmd { return exec.Command("open", what) }

// ownWindow is false: Terminal keeps its window when a program has ended.
func ownWindow() bool { return false }
