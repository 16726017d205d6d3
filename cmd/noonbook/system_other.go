//go:build !windows && !darwin

package main

import "os/exec"

// opener opens what it is given with the program that the desktop has for it.
func opener(what string) *exec.Cmd { return exec.Command("xdg-open", what) }

// ownWindow is false: file managers show no window for a program, or one of a
// terminal that asks before it closes.
func ownWindow() bool { return false }
