// placeholder, replaced as the room is built
