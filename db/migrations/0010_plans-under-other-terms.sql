CREATE TABLE `study` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`enquiry_id` integer NOT NULL,
	`kind` text NOT NULL,
	`input_hash` text NOT NULL,
	`state` text NOT NULL,
	`result_json` text NOT NULL,
	`created_at` text NOT NULL,
	FOREIGN KEY (`enquiry_id`) REFERENCES `enquiry`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE UNIQUE INDEX `study_by_enquiry` ON `study` (`enquiry_id`,`kind`);