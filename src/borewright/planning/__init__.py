"""(map of this room: to be written with its files)"""
