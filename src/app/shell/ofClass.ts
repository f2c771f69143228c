/* What there is of a class server, for benches and for instructors: the first screen's script names this one file. */
export { InstructorScreen } from "../classroom/inClassroom";
export { JoinScreen, SchoolLine } from "../school/inClass";
